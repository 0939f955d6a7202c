// NoteSheet: the words of a note on a picture. look: the view model; ask(x, y) opens it for that
// place, in parts of the picture.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property LookViewModel look
    property real placeX: 0
    property real placeY: 0

    function ask(x: real, y: real) {
        placeX = x;
        placeY = y;
        field.text = "";
        opened = true;
        field.focusField();
    }
    function keep() {
        if (field.text.trim() === "")
            return;
        look.write(placeX, placeY, field.text);
        close();
    }

    title: qsTr("Words on the picture")

    Column {
        width: parent.width
        spacing: Theme.gap

        FaceField {
            id: field
            objectName: "pictureText"
            width: parent.width
            label: qsTr("What is to be seen here")
            maximumLength: 200
            onAccepted: sheet.keep()
        }
        SlabButton {
            objectName: "pictureTextKeep"
            width: parent.width
            height: implicitHeight
            text: qsTr("Keep the words")
            secondLine: waits ? qsTr("write something first") : ""
            waits: field.text.trim() === ""
            onClicked: sheet.keep()
        }
    }
}
