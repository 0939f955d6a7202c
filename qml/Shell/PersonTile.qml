// PersonTile: who, and what his or her clock does. Signal: clicked (choose). 186 x 92. The initial
// makes room for a word that would break.
import QtQuick
import Jambline.Theme

PaperCard {
    id: tile

    required property string personId
    required property string personName
    required property string doing
    required property real seconds
    required property int shape
    required property bool isChosen

    pressable: true
    chosen: isChosen
    foot: isChosen
    padding: 8
    minimumHeight: 92
    name: personName + ", " + doing + (isChosen ? qsTr(", chosen") : qsTr(". Chooses this person."))

    FontMetrics {
        id: letters
        font: who.font
    }
    Item {
        id: room

        // The height is read so that the words are measured anew when the font is there.
        readonly property real longest: letters.height <= 0 ? 0 : Array.from(tile.personName.split(/[\s-]+/)).reduce((most, word) =>
            Math.max(most, letters.advanceWidth(word + "-")), 0)
        readonly property bool faced: longest <= width - 54 - 20

        width: parent.width
        height: Math.max(44, lines.height)

        Rectangle {
            id: face
            visible: room.faced
            width: 44
            height: 44
            radius: 22
            anchors.verticalCenter: parent.verticalCenter
            color: tile.isChosen ? Theme.tape : Theme.paper
            border.width: Theme.line
            border.color: Theme.ink

            Words {
                anchors.centerIn: parent
                text: tile.personName.charAt(0).toUpperCase()
                mute: true
                bold: true
                size: Theme.lead
                color: tile.isChosen ? Theme.tapeInk : Theme.ink
            }
        }
        Column {
            id: lines
            anchors.verticalCenter: parent.verticalCenter
            x: room.faced ? 54 : 0
            width: parent.width - x

            Item {
                width: parent.width
                height: who.height

                Words {
                    id: who
                    width: parent.width - 20
                    text: tile.personName
                    mute: true
                    bold: true
                }
                StateShape {
                    anchors.right: parent.right
                    y: 2
                    kind: tile.shape
                    size: 16
                }
            }
            Words {
                width: parent.width
                text: tile.doing
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
            TimeText {
                visible: tile.seconds >= 0
                seconds: Math.max(0, tile.seconds)
                bold: true
                mute: true
            }
        }
    }
}
