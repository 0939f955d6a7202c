// RecordCard: one car of the record on a phone. The delegate of Record: its fields come from the
// model's roles. Signal: clicked.
import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    required property string jobId
    required property string plate
    required property string color
    required property string colorHex
    required property string body
    required property string opened
    required property string stateWords
    required property string hours
    required property int marks
    required property bool disputed
    required property string hit

    readonly property string look: color === "" ? body : qsTr("%1 · %2").arg(color).arg(body)
    readonly property string counts: marks === 0 ? hours
        : marks === 1 ? qsTr("1 mark open · %1").arg(hours) : qsTr("%1 marks open · %2").arg(marks).arg(hours)

    pressable: true
    name: {
        const said = [plate, look, stateWords, counts, qsTr("opened %1").arg(opened), hit];
        return qsTr("%1. Opens the car.").arg(said.filter(part => part !== "").join(qsTr(", ")));
    }

    Column {
        width: parent.width
        spacing: 6

        Item {
            width: parent.width
            height: Math.max(tape.height, since.height)

            TapeLabel {
                id: tape
                width: Math.min(implicitWidth, parent.width - since.width - 12)
                text: card.plate
                key: card.jobId
                pressable: false
                Accessible.ignored: true
            }
            TimeText {
                id: since
                anchors.right: parent.right
                anchors.verticalCenter: parent.verticalCenter
                text: card.opened
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
        }
        Row {
            width: parent.width
            spacing: 8

            Rectangle {
                id: swatch
                visible: card.colorHex !== ""
                width: visible ? 20 : 0
                height: 20
                radius: 2
                color: visible ? card.colorHex : Theme.sheet
                border.width: 1
                border.color: Theme.edge
                Accessible.ignored: true
            }
            Words {
                width: parent.width - swatch.width - 8
                text: card.look
                mute: true
            }
        }
        Row {
            width: parent.width
            spacing: 8

            StateShape {
                id: shape
                visible: card.disputed
                kind: ShapeKind.Disputed
                size: 20
            }
            Words {
                width: parent.width - (shape.visible ? shape.width + 8 : 0)
                text: qsTr("%1 · %2").arg(card.stateWords).arg(card.counts)
                mute: true
                size: Theme.note
                color: card.disputed ? Theme.oxide : Theme.pencil
            }
        }
        Words {
            width: parent.width
            visible: text !== ""
            text: card.hit
            mute: true
            bold: true
            size: Theme.note
            wrapMode: Text.WrapAtWordBoundaryOrAnywhere
        }
    }
}
