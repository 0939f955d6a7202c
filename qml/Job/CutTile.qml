// CutTile: one question of BeforeCut: its shape, what it asks, how much it weighs and what was said.
// A press answers yes, or opens the answers when it is answered; a hold opens them at once.
import QtQuick
import Jambline.Theme

PaperCard {
    id: tile

    required property string title
    required property string classWords
    required property string answerWords
    required property int shape
    required property bool alarm
    required property string spoken

    pressable: true
    padding: 8
    must: alarm
    name: spoken

    Item {
        width: parent.width
        height: Math.max(mark.height, words.height)

        StateShape {
            id: mark
            anchors.verticalCenter: parent.verticalCenter
            kind: tile.shape
            key: tile.title
            size: 22
        }
        Column {
            id: words
            x: 30
            width: parent.width - x
            anchors.verticalCenter: parent.verticalCenter

            Words {
                width: parent.width
                text: tile.title
                mute: true
                bold: tile.alarm
                size: Theme.note
            }
            Words {
                width: parent.width
                text: tile.answerWords === "" ? tile.classWords : qsTr("%1: %2").arg(tile.classWords).arg(tile.answerWords)
                mute: true
                size: Theme.small
                color: tile.alarm ? Theme.oxide : Theme.pencil
            }
        }
    }
}
