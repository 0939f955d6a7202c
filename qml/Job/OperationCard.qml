// OperationCard: one operation: how it stands and who did it, its hours, why it came on top; open it
// shows what its stage still misses and what can be said. store: where its picture is.
// Signals: opened, finished, reopened, approvalAsked, answered(given).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    required property string key
    required property string title
    required property string stage
    required property string hours
    required property string stands
    required property int shape
    required property string why
    required property string file
    required property bool isOpen
    required property string missing
    required property bool canFinish
    required property bool canReopen
    required property bool canAsk
    required property bool canAnswer
    property PictureStore store: null

    signal opened
    signal finished
    signal reopened
    signal approvalAsked
    signal answered(bool given)

    pressable: true
    chosen: isOpen
    name: Array.from([title, stage, stands, hours, why]).filter(words => words !== "").join(", ")
        + (isOpen ? qsTr(". Shuts it.") : qsTr(". Opens it."))
    onClicked: opened()

    Column {
        width: parent.width
        spacing: Theme.gap

        Item {
            width: parent.width
            height: Math.max(mark.height, said.height)

            StateShape {
                id: mark
                anchors.verticalCenter: parent.verticalCenter
                kind: card.shape
                key: card.key
                size: 26
            }
            Column {
                id: said
                x: mark.width + 12
                width: parent.width - x - (frame.visible ? frame.width + 10 : 0)
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
                    text: card.stage === card.title ? qsTr("%1 · %2").arg(card.stands).arg(card.hours)
                        : qsTr("%1 · %2 · %3").arg(card.stage).arg(card.stands).arg(card.hours)
                    mute: true
                    size: Theme.note
                    color: Theme.pencil
                }
                Words {
                    width: parent.width
                    visible: text !== ""
                    text: card.why
                    mute: true
                    size: Theme.note
                }
            }
            PictureFrame {
                id: frame
                anchors.right: parent.right
                anchors.verticalCenter: parent.verticalCenter
                visible: card.file !== "" && card.store !== null
                width: 64
                height: 52
                store: card.store
                file: card.file
            }
        }
        Words {
            width: parent.width
            visible: text !== ""
            text: card.missing
            size: Theme.note
        }
        ActRow {
            width: parent.width
            visible: card.canFinish || card.canReopen || card.canAsk

            PlainButton {
                objectName: "operationDone"
                visible: card.canFinish
                pressable: visible
                text: qsTr("Done")
                iconName: "check"
                beside: true
                name: qsTr("Done: %1").arg(card.title)
                onClicked: card.finished()
            }
            PlainButton {
                objectName: "operationReopen"
                visible: card.canReopen
                pressable: visible
                text: qsTr("Not done")
                beside: true
                name: qsTr("Not done: %1").arg(card.title)
                onClicked: card.reopened()
            }
            PlainButton {
                objectName: "operationAsk"
                visible: card.canAsk
                pressable: visible
                text: qsTr("Ask for approval")
                beside: true
                name: qsTr("Ask for approval: %1").arg(card.title)
                onClicked: card.approvalAsked()
            }
        }
        ActRow {
            width: parent.width
            visible: card.canAnswer

            PlainButton {
                objectName: "operationApprove"
                text: qsTr("Approve")
                shape: ShapeKind.Done
                beside: true
                name: qsTr("Approve: %1").arg(card.title)
                onClicked: card.answered(true)
            }
            PlainButton {
                objectName: "operationRefuse"
                text: qsTr("Refuse")
                shape: ShapeKind.Must
                beside: true
                name: qsTr("Refuse: %1").arg(card.title)
                onClicked: card.answered(false)
            }
        }
    }
}
