// FloorCard: one car in the shop: its tape (as long as its work is done), what comes next, whose it
// is, when it was promised, how likely that is, when it will be ready or what holds it; on the car that
// is next for the person the act that begins it. Signals: clicked, nextAsked. 112 high, grows with its
// words.
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
    required property string chance
    required property string about
    required property string percent
    required property int outlook
    required property string slack
    required property string line
    required property string nextText
    required property string nextWhy
    required property string held
    required property int shape
    required property real done
    required property string progress
    required property bool disputed
    required property bool onTape

    readonly property real dueRoom: promised.natural + 24

    signal nextAsked

    pressable: true
    quiet: true
    padding: 0
    chosen: onTape
    name: Array.from([plate, carWords, held, next, who, due, chance, percent, about, slack, line, progress]).filter(words => words !== "").join(", ")
        + qsTr(". Opens the car.")

    Item {
        width: parent.width
        height: Math.max(112, tape.height + body.height + 12) + (begin.visible ? begin.height + 12 : 0)

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
            Item {
                width: parent.width
                height: Math.max(acts.height, odds.height)

                Column {
                    id: acts
                    width: parent.width - (odds.width > 0 ? odds.width + 10 : 0)
                    spacing: 2

                    Words {
                        width: parent.width
                        text: card.next
                        mute: true
                        bold: true
                        size: Theme.lead
                    }
                    Words {
                        width: parent.width
                        text: qsTr("%1 · %2").arg(card.who).arg(card.slack !== "" && card.outlook < 2 ? card.slack : card.progress)
                        mute: true
                        size: Theme.note
                        color: Theme.pencil
                    }
                }
                Odds {
                    id: odds
                    objectName: "floorChance"
                    anchors.right: parent.right
                    visible: card.chance !== ""
                    width: visible ? Math.min(natural, parent.width * 0.45) : 0
                    spacing: 2
                    alignRight: true
                    size: Theme.lead
                    chance: card.chance
                    percent: card.percent
                    about: card.about
                    outlook: card.outlook
                }
            }
            Words {
                objectName: "floorLine"
                width: parent.width
                visible: text !== ""
                text: card.line
                mute: true
                size: Theme.note
            }
        }
        PlainButton {
            id: begin
            objectName: "floorBegin"
            visible: card.nextText !== ""
            pressable: visible
            x: 12
            y: parent.height - height - 12
            width: parent.width - 24
            height: implicitHeight
            text: card.nextText
            secondLine: card.nextWhy
            name: qsTr("%1, %2, %3").arg(card.nextText).arg(card.plate).arg(card.nextWhy)
            onClicked: card.nextAsked()
        }
    }
}
