// RuleRow: one rule: what waits, what it is not before, and why; a manager retires it or puts it back.
// actText: "" nothing to do here. Signal: acted.
import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    required property string title
    required property string before
    required property string why
    required property int shape
    property string actText: ""
    property string actName: ""
    readonly property bool folded: width < 330 * Theme.textScale

    signal acted

    name: qsTr("%1, %2, %3").arg(title).arg(before).arg(why)

    Item {
        width: parent.width
        height: card.folded && act.visible ? said.height + act.height + 8 : Math.max(mark.height, said.height, act.visible ? act.height : 0)

        StateShape {
            id: mark
            y: ((card.folded ? said.height : parent.height) - height) / 2
            kind: card.shape
            key: card.title
            size: 24
        }
        Column {
            id: said
            x: mark.width + 12
            y: card.folded ? 0 : (parent.height - height) / 2
            width: parent.width - x - (act.visible && !card.folded ? act.width + 8 : 0)
            spacing: 2

            Words {
                width: parent.width
                text: card.title
                mute: true
                bold: true
            }
            Words {
                width: parent.width
                text: card.before
                mute: true
                size: Theme.note
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: card.why
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
        }
        PlainButton {
            id: act
            objectName: card.actName
            x: parent.width - width
            y: card.folded ? said.height + 8 : (parent.height - height) / 2
            width: card.folded ? parent.width : Math.max(Theme.touch, implicitWidth)
            height: implicitHeight
            visible: card.actText !== ""
            pressable: visible
            text: card.actText
            name: qsTr("%1: %2, %3").arg(card.actText).arg(card.title).arg(card.before)
            onClicked: card.acted()
        }
    }
}
