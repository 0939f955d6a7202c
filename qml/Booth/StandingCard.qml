// StandingCard: how a thing stands: its shape, its name, the word of its state, and below what it
// rests on. alarm: the state is said in oxide. pressable with `name` as every card.
import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    property string title: ""
    property string stateWords: ""
    property string words: ""
    property string note: ""
    property int shape: ShapeKind.None
    property bool alarm: false

    must: alarm

    Item {
        width: parent.width
        height: Math.max(mark.height, lines.height)

        StateShape {
            id: mark
            anchors.verticalCenter: parent.verticalCenter
            kind: card.shape
            size: 26
            key: card.title
        }
        Column {
            id: lines
            x: mark.kind === ShapeKind.None ? 0 : mark.width + 12
            width: parent.width - x
            anchors.verticalCenter: parent.verticalCenter
            spacing: 2

            Words {
                width: parent.width
                text: card.title
                mute: card.name !== ""
                bold: true
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: card.stateWords
                mute: card.name !== ""
                bold: card.alarm
                color: card.alarm ? Theme.oxide : Theme.ink
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: card.words
                mute: card.name !== ""
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: card.note
                mute: card.name !== ""
                size: Theme.note
                color: Theme.pencil
            }
        }
    }
}
