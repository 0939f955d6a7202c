// GunTile: one stop or must of BeforeGun: its shape, what it asks, how much it weighs and what was
// said. A press answers yes, or opens its answers; a hold opens them at once.
import QtQuick
import Jambline.Theme

PaperCard {
    id: tile

    required property string title
    required property string words
    required property string classWords
    required property string answerWords
    required property int shape
    required property bool alarm
    required property string spoken

    pressable: true
    padding: 10
    must: alarm
    name: spoken

    Item {
        width: parent.width
        height: Math.max(mark.height, said.height)

        StateShape {
            id: mark
            anchors.verticalCenter: parent.verticalCenter
            kind: tile.shape
            key: tile.title
            size: 28
        }
        Column {
            id: said
            x: 38
            width: parent.width - x
            anchors.verticalCenter: parent.verticalCenter
            spacing: 2

            Words {
                width: parent.width
                text: tile.title
                mute: true
                bold: tile.alarm
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: tile.words
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
            Words {
                width: parent.width
                text: tile.answerWords === "" ? tile.classWords : qsTr("%1: %2").arg(tile.classWords).arg(tile.answerWords)
                mute: true
                bold: tile.alarm
                size: Theme.note
                color: tile.alarm ? Theme.oxide : Theme.pencil
            }
        }
    }
}
