// PeopleSheet: who it is, one more person, and the settings of this device.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property ClockViewModel clock
    required property SettingsViewModel settings
    property bool adding: false

    title: qsTr("Who is it?")
    onClosed: adding = false

    Column {
        width: parent.width
        spacing: Theme.gap

        PeopleTiles {
            width: parent.width
            clock: sheet.clock
        }
        PlainButton {
            objectName: "onePersonMore"
            visible: !form.visible
            pressable: visible
            width: parent.width
            height: implicitHeight
            text: qsTr("Add a person")
            iconName: "plus"
            beside: true
            onClicked: sheet.adding = true
        }
        AddPerson {
            id: form
            visible: sheet.adding || !sheet.clock.anyPeople
            width: parent.width
            clock: sheet.clock
            onAdded: sheet.adding = false
        }
        SettingsRows {
            width: parent.width
            settings: sheet.settings
        }
    }
}
