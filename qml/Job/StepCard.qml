// StepCard: one step of putting the car together: its shape, who did it or what it is not before, and
// the rule that it was done against. Signal: clicked. objectName by its key.
import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    required property string key
    required property string title
    required property string words
    required property string broken
    required property int shape
    required dashed
    required property bool isNext

    objectName: "step " + key
    pressable: true
    chosen: isNext
    must: broken !== ""
    name: Array.from([title, words, broken === "" ? "" : qsTr("against a rule, %1").arg(broken)]).filter(one => one !== "").join(", ")
        + qsTr(". Opens it.")

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
            width: parent.width - x
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
                text: card.words
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
            Row {
                width: parent.width
                visible: card.broken !== ""
                spacing: 6

                StateShape {
                    id: against
                    kind: ShapeKind.Must
                    size: 18
                }
                Words {
                    width: parent.width - against.width - 6
                    text: qsTr("against a rule, %1").arg(card.broken)
                    mute: true
                    bold: true
                    size: Theme.note
                    color: Theme.oxide
                }
            }
        }
    }
}
