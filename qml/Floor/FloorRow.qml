// FloorRow: a row above the cars of something that wants to be looked at. words; shape (ShapeKind).
// Signal: clicked.
import QtQuick
import Jambline.Theme

PaperCard {
    id: row

    property string words: ""
    property int shape: ShapeKind.Waits

    pressable: visible
    name: qsTr("%1. Opens them.").arg(words)

    Item {
        width: parent.width
        height: Math.max(mark.height, said.height)

        StateShape {
            id: mark
            anchors.verticalCenter: parent.verticalCenter
            kind: row.shape
            key: row.words
            size: 24
        }
        Words {
            id: said
            x: mark.width + 12
            width: parent.width - x - 32
            anchors.verticalCenter: parent.verticalCenter
            text: row.words
            mute: true
            bold: true
        }
        Icon {
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            source: "forward"
        }
    }
}
