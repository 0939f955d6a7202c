// QuestionTableSheet: the shown rows as a CSV file for other programs: where to. ask: the view model.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property QuestionViewModel ask

    title: qsTr("Export CSV")

    Column {
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gutter

        Words {
            width: parent.width
            text: qsTr("%1, %2: one line a row, exact numbers, units in the heads. A file that is there stays as it is.")
                .arg(sheet.ask.title).arg(sheet.ask.timeTitle)
        }
        FaceField {
            id: place
            objectName: "questionPlace"
            width: parent.width
            label: qsTr("Folder")
            text: sheet.ask.place
            maximumLength: 4096
        }
        Words {
            objectName: "questionWritten"
            width: parent.width
            visible: text !== ""
            text: sheet.ask.written
            bold: true
            wrapMode: Text.WrapAtWordBoundaryOrAnywhere
        }
        SlabButton {
            objectName: "questionWrite"
            width: parent.width
            height: implicitHeight
            text: qsTr("Write the table")
            onClicked: sheet.ask.writeTable(place.text)
        }
    }
}
