// DeviceRow: one device of the shop in the list: what it is called, what it is, when it was seen.
// called, words, seen, shape. Signal: clicked.
import QtQuick
import Jambline.Theme

PaperCard {
    id: row

    required property string called
    required property string words
    required property string seen
    required property int shape

    pressable: true
    name: qsTr("%1. Opens the device.").arg(called + (words === "" ? "" : ", " + words)
                                                   + (seen === "" ? "" : ", " + seen))

    Item {
        width: parent.width
        height: Math.max(mark.height, lines.height)

        StateShape {
            id: mark
            anchors.verticalCenter: parent.verticalCenter
            kind: row.shape
            key: row.called
            size: 26
        }
        Column {
            id: lines
            x: 38
            width: parent.width - x - 32
            anchors.verticalCenter: parent.verticalCenter
            spacing: 2

            Words {
                width: parent.width
                text: row.called
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
            Words {
                width: parent.width
                visible: text !== ""
                text: row.seen
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
        }
        Icon {
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            source: "forward"
        }
    }
}
