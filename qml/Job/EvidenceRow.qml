// EvidenceRow: the way to "what threw it", with its answer in one line. Nothing while there is
// nothing to say. Signal: clicked.
import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    property EvidenceViewModel evidence: null

    objectName: "evidenceRow"
    visible: evidence?.ready ?? false
    pressable: visible
    name: qsTr("What threw it, %1").arg(evidence?.rowWords ?? "")

    Item {
        width: parent.width
        height: Math.max(shape.height, words.height)

        StateShape {
            id: shape
            anchors.verticalCenter: parent.verticalCenter
            kind: !card.evidence ? ShapeKind.None : card.evidence.disputed ? ShapeKind.Disputed : card.evidence.setWords !== "" ? ShapeKind.Done : card.evidence.answerShape
            size: 26
        }
        Column {
            id: words
            x: shape.width + 12
            width: parent.width - x - on.width - 8
            anchors.verticalCenter: parent.verticalCenter
            spacing: 2

            Words {
                width: parent.width
                text: qsTr("What threw it")
                mute: true
                bold: true
            }
            Words {
                objectName: "evidenceRowWords"
                width: parent.width
                text: card.evidence?.rowWords ?? ""
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
        }
        Icon {
            id: on
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            source: "forward"
        }
    }
}
