// EstimateImport: operations out of a CSV file: a path (or a dropped file, or the text itself), then
// a preview with every row that fits and every one that does not, and why.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: panel

    required property OpenCarViewModel form

    spacing: Theme.gap

    FaceField {
        id: path
        objectName: "csvPath"
        width: parent.width
        label: qsTr("Estimate lines from a CSV file")
        placeholder: qsTr("path, or drop the file here")
        maximumLength: 32767
        onAccepted: text => panel.form.readCsv(text)

        DropArea {
            anchors.fill: parent
            onDropped: drop => {
                if (drop.hasUrls)
                    path.text = drop.urls[0];
                panel.form.readCsv(drop.hasUrls ? drop.urls[0] : drop.text);
            }
        }
    }
    Words {
        width: parent.width
        text: qsTr("First line: stage,title,hours")
        size: Theme.note
        color: Theme.pencil
    }
    PlainButton {
        objectName: "csvRead"
        width: parent.width
        visible: path.text.trim() !== "" && !panel.form.csvShown
        pressable: visible
        text: qsTr("Show what is in it")
        onClicked: panel.form.readCsv(path.text)
    }
    PaperCard {
        width: parent.width
        visible: panel.form.csvShown

        Column {
            id: rows
            width: parent.width
            spacing: 10

            Words {
                width: parent.width
                text: panel.form.csvWords
                bold: true
            }
            Repeater {
                model: panel.form.csvRows

                Row {
                    id: row

                    required property string text
                    required property string why
                    required property bool good

                    width: rows.width
                    spacing: 10

                    StateShape {
                        id: mark
                        kind: row.good ? ShapeKind.Done : ShapeKind.Must
                        size: 20
                    }
                    Column {
                        width: row.width - mark.width - 10

                        Words {
                            width: parent.width
                            text: row.text
                            wrapMode: Text.WrapAnywhere
                        }
                        Words {
                            width: parent.width
                            text: row.why
                            bold: !row.good
                            size: Theme.note
                            color: row.good ? Theme.pencil : Theme.oxide
                        }
                    }
                }
            }
            ActRow {
                width: parent.width

                PlainButton {
                    objectName: "csvUse"
                    visible: panel.form.csvCount > 0
                    pressable: visible
                    text: panel.form.csvCount === 1 ? qsTr("Use 1 row") : qsTr("Use %1 rows").arg(panel.form.csvCount)
                    onClicked: {
                        panel.form.useCsv();
                        path.text = "";
                    }
                }
                PlainButton {
                    objectName: "csvDrop"
                    text: qsTr("Leave it")
                    onClicked: {
                        panel.form.dropCsv();
                        path.text = "";
                    }
                }
            }
        }
    }
}
