// ShotRow: one wanted picture in a list: where to stand, what it shows, how it stands. Set from a row
// of ShotsViewModel. Signal: clicked.
import QtQuick
import Jambline.Theme

PaperCard {
    id: row

    required property string title
    required property string stand
    required property int view
    required property int shape
    required property string words

    objectName: "shotRow"
    pressable: true
    name: qsTr("%1, %2. %3").arg(title).arg(words).arg(stand)
    padding: 8

    Item {
        width: parent.width
        height: Math.max(drawing.height, said.height)

        ShotDrawing {
            id: drawing
            width: 64
            height: 64
            view: row.view
        }
        Column {
            id: said
            anchors.verticalCenter: parent.verticalCenter
            x: drawing.width + 12
            width: parent.width - x - 4
            spacing: 3

            Words {
                width: parent.width
                text: row.title
                mute: true
                bold: true
            }
            Words {
                width: parent.width
                text: row.stand
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
            Row {
                width: parent.width
                spacing: 8

                StateShape {
                    id: mark
                    kind: row.shape
                    size: 18
                }
                Words {
                    width: parent.width - mark.width - 8
                    text: row.words
                    mute: true
                    size: Theme.note
                }
            }
        }
    }
}
