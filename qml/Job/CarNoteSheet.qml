// CarNoteSheet: a note on the car. show() opens it empty; it closes when the note is kept. car: the view
// model.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property CarViewModel car

    function show() {
        field.text = "";
        opened = true;
        field.focusField();
    }

    title: qsTr("Note")

    Connections {
        target: sheet.car
        function onNoteKept() {
            sheet.close();
        }
    }

    Column {
        width: parent.width
        spacing: Theme.gap

        FaceField {
            id: field
            objectName: "noteField"
            width: parent.width
            label: qsTr("What to know of this car")
            maximumLength: 1000
            onAccepted: sheet.car.writeNote(text)
        }
        SlabButton {
            objectName: "noteKeep"
            width: parent.width
            text: qsTr("Keep the note")
            secondLine: field.text.trim() === "" ? qsTr("write something first") : ""
            waits: field.text.trim() === ""
            onClicked: sheet.car.writeNote(field.text)
        }
    }
}
