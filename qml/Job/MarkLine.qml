// MarkLine: a mark in a list: its ring, kind and number, size and place in words. Signal: clicked.
import QtQuick
import Jambline.Theme

PaperCard {
    id: line

    required property string mark
    required property string title
    required property string note
    required property string place
    required property string spoken

    pressable: true
    padding: 8
    name: qsTr("%1. Opens the mark.").arg(spoken)
    implicitHeight: Math.max(Theme.row, words.height + 16)

    Item {
        width: parent.width
        height: Math.max(26, words.height)

        StateShape {
            id: ring
            x: 4
            anchors.verticalCenter: parent.verticalCenter
            kind: ShapeKind.Ring
            size: 22
            key: line.mark
        }
        Column {
            id: words
            x: 38
            width: parent.width - x - more.width - 8
            anchors.verticalCenter: parent.verticalCenter

            Words {
                width: parent.width
                text: line.title
                mute: true
                bold: true
            }
            Words {
                width: parent.width
                text: qsTr("%1 · %2").arg(line.place).arg(line.note)
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
        }
        Icon {
            id: more
            anchors { right: parent.right; verticalCenter: parent.verticalCenter }
            source: "forward"
            size: 20
            color: Theme.pencil
        }
    }
}
