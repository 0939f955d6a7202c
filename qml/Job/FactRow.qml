// FactRow: one line of what stands with its shape, and the way to it. title; words; shape
// (ShapeKind). Signal: clicked.
import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    property string title: ""
    property string words: ""
    property int shape: ShapeKind.None
    property bool alarm: false

    pressable: true
    must: alarm
    name: qsTr("%1, %2").arg(title).arg(words)

    Item {
        width: parent.width
        height: Math.max(mark.height, said.height)

        StateShape {
            id: mark
            anchors.verticalCenter: parent.verticalCenter
            kind: card.shape
            key: card.title
            size: 26
        }
        Column {
            id: said
            x: mark.width > 0 ? mark.width + 12 : 0
            width: parent.width - x - on.width - 8
            anchors.verticalCenter: parent.verticalCenter
            spacing: 2

            Words {
                width: parent.width
                text: card.title
                mute: true
                bold: true
            }
            Words {
                width: parent.width
                text: card.words
                mute: true
                size: Theme.note
                color: card.alarm ? Theme.oxide : Theme.pencil
            }
        }
        Icon {
            id: on
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            source: "forward"
        }
    }
}
