// PeopleSheet: who it is, one more person, the settings of this device, and the ways to the shop
// and to how long its records are kept.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property ClockViewModel clock
    required property SettingsViewModel settings
    required property PinViewModel pin
    required property DemoViewModel demo
    property bool adding: false

    signal pinWanted
    property string syncWords: ""

    signal shopWanted
    signal sendingWanted
    signal keepWanted

    title: qsTr("Who is it?")
    onClosed: adding = false

    Column {
        width: parent.width
        spacing: Theme.gap

        PeopleTiles {
            id: tiles
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
        ActRow {
            width: parent.width
            visible: sheet.pin.maySet

            PlainButton {
                objectName: "setPin"
                text: sheet.pin.hasPin ? qsTr("Change my PIN") : qsTr("Set a PIN for me")
                secondLine: sheet.pin.hasPin ? "" : qsTr("then nobody taps as me")
                onClicked: sheet.pinWanted()
            }
            PlainButton {
                objectName: "dropPin"
                visible: sheet.pin.hasPin
                pressable: visible
                text: qsTr("No PIN")
                secondLine: qsTr("anybody may choose me")
                onClicked: sheet.pin.set("")
            }
        }
        Repeater {
            model: sheet.pin.others

            PlainButton {
                required property string personId
                required property string personName

                width: tiles.width
                height: implicitHeight
                text: qsTr("Take away the PIN of %1").arg(personName)
                onClicked: sheet.pin.takeAway(personId)
            }
        }
        PlainButton {
            objectName: "theShop"
            visible: sheet.clock.anyPeople
            pressable: visible
            width: parent.width
            height: implicitHeight
            text: qsTr("The shop")
            secondLine: qsTr("name, people, racks, backup")
            onClicked: sheet.shopWanted()
        }
        PlainButton {
            objectName: "keepAndForget"
            visible: sheet.clock.anyPeople
            pressable: visible
            width: parent.width
            height: implicitHeight
            text: qsTr("Keep and forget")
            secondLine: qsTr("how long records are kept, who has left")
            onClicked: sheet.keepWanted()
        }
        PlainButton {
            objectName: "sendingAndDevices"
            visible: sheet.clock.anyPeople && !sheet.demo.isDemo
            pressable: visible
            width: parent.width
            height: implicitHeight
            text: qsTr("Sending and devices")
            secondLine: sheet.syncWords
            onClicked: sheet.sendingWanted()
        }
        PlainButton {
            objectName: "leaveDemo"
            visible: sheet.demo.isDemo
            pressable: visible
            width: parent.width
            height: implicitHeight
            text: qsTr("Leave the demo shop")
            secondLine: qsTr("it is thrown away; your own shop is as it was")
            onClicked: sheet.demo.leave()
        }
        SettingsRows {
            width: parent.width
            settings: sheet.settings
        }
    }
}
