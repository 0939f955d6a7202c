// BoothStateRow: what stands in a booth now: shape, word, one line, and the time where one counts.
// pressable: it leads on. Signal: clicked.
import QtQuick
import Jambline.Theme

PaperCard {
    id: row

    property int shape: ShapeKind.None
    property string words: ""
    property string line: ""
    property string countdown: ""

    bare: !pressable
    padding: pressable ? 12 : 0
    side: pressable
    footColor: shape === ShapeKind.Must ? Theme.oxide : Theme.ochre
    minimumHeight: pressable ? Theme.touch : 0

    Item {
        width: parent.width
        height: Math.max(mark.height, said.height, time.height)

        StateShape {
            id: mark
            x: row.side ? 6 : 0
            anchors.verticalCenter: parent.verticalCenter
            kind: row.shape
            size: 28
        }
        Column {
            id: said
            x: mark.x + mark.width + 12
            width: parent.width - x - (time.visible ? time.width + 12 : 0)
            anchors.verticalCenter: parent.verticalCenter
            spacing: 2

            Words {
                width: parent.width
                text: row.words
                mute: row.pressable
                bold: true
                size: Theme.lead
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: row.line
                mute: row.pressable
                color: Theme.pencil
            }
        }
        TimeText {
            id: time
            visible: text !== ""
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            text: row.countdown
            mute: true
            bold: true
            size: Theme.place
        }
    }
}
