// FloorCard: one car in the shop: its tape (as long as its work is done), what comes next, whose it
// is, and when it was promised. Signal: clicked. 112 high, grows with its words.
import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    required property int index
    required property string jobId
    required property string plate
    required property string carWords
    required property string next
    required property string who
    required property string due
    required property string late
    required property string held
    required property int shape
    required property real done
    required property string progress
    required property bool disputed
    required property bool onTape

    readonly property real dueRoom: promised.natural + 24

    pressable: true
    quiet: true
    padding: 0
    chosen: onTape
    name: Array.from([plate, carWords, held, next, who, due, late, progress]).filter(words => words !== "").join(", ")
        + qsTr(". Opens the car.")

    Item {
        width: parent.width
        height: Math.max(112, tape.height + body.height + 12)

        TapeLabel {
            id: tape

            readonly property real shortest: Math.min(parent.width - card.dueRoom, implicitWidth)

            width: shortest + (parent.width - card.dueRoom - shortest) * card.done
            text: card.plate
            aside: card.carWords
            key: card.jobId
            lift: 42
            tornLeft: false
            Accessible.ignored: true
        }
        Words {
            id: promised
            anchors.right: parent.right
            anchors.rightMargin: 12
            y: (tape.height - height) / 2
            text: card.due
            mute: true
            wrapMode: Text.NoWrap
        }
        StateShape {
            id: mark
            x: 14
            y: tape.height + (body.height - height) / 2 + 4
            kind: card.shape
            key: card.jobId
            size: 28
        }
        Column {
            id: body
            x: 54
            y: tape.height + 8
            width: parent.width - x - 12
            spacing: 2

            Row {
                objectName: "floorHeld"
                width: parent.width
                visible: card.held !== ""
                spacing: 8

                StateShape {
                    id: stop
                    kind: ShapeKind.Must
                    key: card.jobId
                    size: 20
                }
                Words {
                    width: parent.width - stop.width - 8
                    text: card.held
                    mute: true
                    bold: true
                    color: Theme.oxide
                }
            }
            Row {
                width: parent.width
                spacing: 8

                Words {
                    width: parent.width - (delay.visible ? delay.width + 8 : 0)
                    text: card.next
                    mute: true
                    bold: true
                    size: Theme.lead
                }
                Words {
                    id: delay
                    visible: text !== ""
                    width: natural
                    text: card.late
                    mute: true
                    bold: true
                    color: Theme.oxide
                }
            }
            Row {
                width: parent.width
                spacing: 8

                Words {
                    width: parent.width - steps.width - 8
                    text: card.who
                    mute: true
                    size: Theme.note
                    color: Theme.pencil
                }
                Words {
                    id: steps
                    width: natural
                    text: card.progress
                    mute: true
                    size: Theme.note
                    color: Theme.pencil
                }
            }
        }
    }
}
