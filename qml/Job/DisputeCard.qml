// DisputeCard: a panel of which two people say different things: both, with who and when; one tap
// on one of them settles it.
pragma ComponentBehavior: Bound
import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    required property InspectViewModel inspect

    disputed: true
    name: qsTr("Disputed: two verdicts stand")

    Column {
        width: parent.width
        spacing: Theme.gap

        Row {
            spacing: 10

            StateShape {
                kind: ShapeKind.Disputed
                anchors.verticalCenter: parent.verticalCenter
            }
            Words {
                width: Math.min(natural, card.width - 70)
                text: qsTr("Disputed. Take the one that holds:")
                mute: true
                bold: true
            }
        }
        Repeater {
            model: card.inspect.disputed ? card.inspect.disputeWords() : []

            PlainButton {
                required property int index
                required property string modelData
                objectName: "settle" + index
                width: card.width - 24
                height: implicitHeight
                text: modelData
                name: qsTr("Take: %1").arg(modelData)
                onClicked: card.inspect.settle(index)
            }
        }
    }
}
