// LeaverCard: somebody who has left: what was done last, until when that is usually kept, and the way
// to forgetting. The delegate of KeepAndForget: its fields come from the model's roles. Signals:
// forgetAsked, whoAsked.
import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    required property string key
    required property string title
    required property string last
    required property string until
    required property int shape
    required property string state
    required property bool mayForget
    required property string spoken
    property bool mayKeep: false

    signal forgetAsked
    signal whoAsked

    dashed: !mayForget
    name: spoken

    Column {
        width: parent.width
        spacing: 6

        Words {
            width: parent.width
            text: card.title
            bold: true
            wrapMode: Text.WrapAtWordBoundaryOrAnywhere
        }
        Row {
            width: parent.width
            spacing: 8

            StateShape {
                id: mark
                kind: card.shape
                size: 20
            }
            Words {
                width: parent.width - mark.width - 8
                text: card.state
                bold: true
            }
        }
        Words {
            width: parent.width
            text: card.last
        }
        Words {
            width: parent.width
            text: card.until
            size: Theme.note
            color: Theme.pencil
        }
        PlainButton {
            objectName: "forget"
            visible: card.mayForget
            pressable: visible
            width: parent.width
            height: implicitHeight
            text: qsTr("Forget %1").arg(card.title)
            secondLine: card.mayKeep ? qsTr("says first what goes and what stays") : qsTr("a manager does it")
            onClicked: {
                if (card.mayKeep)
                    card.forgetAsked();
                else
                    card.whoAsked();
            }
        }
    }
}
