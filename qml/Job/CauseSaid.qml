// CauseSaid: the cause as it stands, by whom and when; two of them when people disagree, one tap on
// one settles it. Nothing while nobody said anything. Signal: settled(row).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    required property EvidenceViewModel evidence

    signal settled(int row)

    visible: evidence.setWords !== ""
    disputed: evidence.disputed
    name: evidence.setWords

    Column {
        width: parent.width
        spacing: Theme.gap

        Row {
            width: parent.width
            spacing: 10

            StateShape {
                id: shape
                kind: card.evidence.disputed ? ShapeKind.Disputed : ShapeKind.Done
                anchors.verticalCenter: parent.verticalCenter
            }
            Words {
                objectName: "causeSaid"
                width: parent.width - shape.width - 10
                text: card.evidence.disputed ? qsTr("Disputed. Take the one that holds:") : card.evidence.setWords
                mute: true
                bold: true
            }
        }
        Repeater {
            model: card.evidence.disputeWords

            PlainButton {
                required property int index
                required property string modelData

                objectName: "causeSettle" + index
                width: card.width - 2 * card.padding
                height: implicitHeight
                text: modelData
                name: qsTr("Take: %1").arg(modelData)
                onClicked: card.settled(index)
            }
        }
    }
}
