// PlaceRow: one of the places where work is: its shape, what it is, how much is there. title, words,
// shape (ShapeKind).
import QtQuick
import Jambline.Theme

PaperCard {
    id: row

    required property string title
    required property string words
    required property int shape

    name: qsTr("%1: %2").arg(title).arg(words)

    Item {
        width: parent.width
        height: Math.max(mark.height, lines.height)

        StateShape {
            id: mark
            anchors.verticalCenter: parent.verticalCenter
            kind: row.shape
            key: row.title
            size: 26
        }
        Column {
            id: lines
            x: 38
            width: parent.width - x
            anchors.verticalCenter: parent.verticalCenter
            spacing: 2

            Words {
                width: parent.width
                text: row.title
                mute: true
                bold: true
            }
            Words {
                width: parent.width
                text: row.words
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
        }
    }
}
