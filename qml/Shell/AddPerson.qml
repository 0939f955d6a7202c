// AddPerson: a name, a role, and the act that adds them; the new person is chosen at once.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: form

    required property ClockViewModel clock
    property int role: 0

    signal added

    spacing: Theme.gap

    FaceField {
        id: field
        objectName: "personName"
        width: parent.width
        label: qsTr("Name")
        maximumLength: 40
        placeholder: qsTr("first name is enough")
        onAccepted: add.press()
    }
    Flow {
        width: parent.width
        spacing: Theme.gap

        Repeater {
            model: form.clock.roles

            PlainButton {
                required property int index
                required property string modelData

                width: (form.width - Theme.gap) / 2
                height: implicitHeight
                text: modelData
                chosen: form.role === index
                onClicked: form.role = index
            }
        }
    }
    SlabButton {
        id: add
        objectName: "addPerson"
        width: parent.width
        height: implicitHeight
        waits: field.text.trim() === ""
        text: qsTr("Add to the shop")
        secondLine: waits ? qsTr("needs a name") : ""
        onRefused: field.focusField()
        onClicked: form.clock.addPerson(field.text, form.role)
    }
    Connections {
        target: form.clock
        function onPersonAdded() {
            field.text = "";
            form.added();
        }
    }
}
