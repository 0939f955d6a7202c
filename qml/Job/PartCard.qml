// PartCard: one part (or the whole car): shape and word of where it stands, its place, and what can
// be done with it. Signals: offerAsked, takeAsked, backAsked.
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
    property bool mine: false

    signal offerAsked
    signal takeAsked
    signal backAsked

    disputed: partState === PartsViewModel.Disputed
    side: mine
    footColor: Theme.blue
    name: qsTr("%1, %2, %3").arg(title).arg(stateWords).arg(place)

    Column {
        width: parent.width
        spacing: Theme.gap

        Item {
            width: parent.width
            height: Math.max(mark.height, words.height)

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
                width: parent.width - x
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
        }
        ActRow {
            width: parent.width
            visible: card.canOffer || card.canTake

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
                visible: card.canTake
                pressable: visible
                text: qsTr("Send back")
                iconName: "undo"
                beside: true
                name: qsTr("Send back: %1").arg(card.title)
                onClicked: card.backAsked()
            }
        }
    }
}
