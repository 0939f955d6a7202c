// PartCard: one part (or the whole car): shape and word of where it stands, its place, and what can
// be done with it. takers: who has it by his own word, when more than one does; one press settles it.
// file: the picture that it came back with, in store.
// Signals: offerAsked, takeAsked, backAsked, settled(taker), whoAsked (somebody else has it).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    required property string title
    required property string verdict
    required property string place
    required property int partState
    required property string stateWords
    required property bool canOffer
    required property bool canTake
    required property var takers
    required property bool canSay
    required property string file
    property PictureStore store: null
    property bool mine: false

    signal offerAsked
    signal takeAsked
    signal backAsked
    signal settled(int taker)
    signal whoAsked

    disputed: partState === PartsViewModel.Disputed
    side: mine
    footColor: Theme.blue
    name: qsTr("%1, %2, %3").arg(title).arg(stateWords).arg(place)

    Column {
        width: parent.width
        spacing: Theme.gap

        Item {
            width: parent.width
            height: Math.max(mark.height, words.height, frame.visible ? frame.height : 0)

            StateShape {
                id: mark
                x: card.mine ? 6 : 0
                anchors.verticalCenter: parent.verticalCenter
                size: 26
                key: card.title
                kind: card.partState === PartsViewModel.Taken ? ShapeKind.Done
                    : card.partState === PartsViewModel.Offered ? ShapeKind.Waits
                    : card.partState === PartsViewModel.Ready ? ShapeKind.Done
                    : card.partState === PartsViewModel.Returned ? ShapeKind.Must
                    : card.partState === PartsViewModel.Disputed ? ShapeKind.Disputed : ShapeKind.NotYet
            }
            Column {
                id: words
                x: mark.x + mark.width + 12
                width: parent.width - x - (frame.visible ? frame.width + 10 : 0)
                anchors.verticalCenter: parent.verticalCenter
                spacing: 2

                Words {
                    width: parent.width
                    text: card.title
                    mute: true
                    bold: true
                    size: Theme.lead
                }
                Words {
                    width: parent.width
                    text: card.place === "" ? card.stateWords : qsTr("%1: %2").arg(card.stateWords).arg(card.place)
                    mute: true
                    color: Theme.pencil
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
        Repeater {
            model: card.takers

            PlainButton {
                required property int index
                required property string modelData

                objectName: "hasIt" + index
                width: parent?.width ?? 0
                height: implicitHeight
                text: qsTr("%1 has it").arg(modelData)
                name: qsTr("%1: %2 has it. Settles it.").arg(card.title).arg(modelData)
                onClicked: card.settled(index)
            }
        }
        ActRow {
            width: parent.width
            visible: card.canOffer || card.canTake || card.canSay

            PlainButton {
                visible: card.canOffer
                pressable: visible
                text: qsTr("Hand on")
                iconName: "give"
                beside: true
                name: qsTr("Hand on: %1").arg(card.title)
                onClicked: card.offerAsked()
            }
            PlainButton {
                visible: card.canTake
                pressable: visible
                text: qsTr("Take")
                iconName: "take"
                beside: true
                name: qsTr("Take: %1").arg(card.title)
                onClicked: card.takeAsked()
            }
            PlainButton {
                objectName: "sendBack"
                visible: card.canTake
                pressable: visible
                text: qsTr("Send back")
                iconName: "undo"
                beside: true
                name: qsTr("Send back: %1").arg(card.title)
                onClicked: card.backAsked()
            }
            PlainButton {
                objectName: "otherHasIt"
                visible: card.canSay
                pressable: visible
                text: qsTr("Someone else has it")
                beside: true
                name: qsTr("Someone else has it: %1").arg(card.title)
                onClicked: card.whoAsked()
            }
        }
    }
}
