// OrderRow: one part on order, or one work outside: its shape and words, the act that is usual next,
// and the way to say anything else. actText: "" nothing is usual. Signals: acted, opened.
import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    required property string title
    required property string words
    required property int shape
    property string actText: ""
    property string actName: ""
    property bool writable: true
    readonly property bool folded: width < 330 * Theme.textScale

    signal acted
    signal opened

    pressable: writable
    must: shape === ShapeKind.Must
    name: qsTr("%1, %2. Opens it.").arg(title).arg(words)
    onClicked: opened()

    Item {
        width: parent.width
        height: card.folded && act.visible ? said.height + act.height + 8 : Math.max(mark.height, said.height, act.visible ? act.height : 0)

        StateShape {
            id: mark
            y: ((card.folded ? said.height : parent.height) - height) / 2
            kind: card.shape
            key: card.title
            size: 26
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
                text: card.words
                mute: true
                size: Theme.note
                color: card.shape === ShapeKind.Must ? Theme.oxide : Theme.pencil
            }
        }
        PlainButton {
            id: act
            objectName: card.actName
            x: parent.width - width
            y: card.folded ? said.height + 8 : (parent.height - height) / 2
            width: card.folded ? parent.width : Math.max(Theme.touch, implicitWidth)
            height: implicitHeight
            visible: card.writable && card.actText !== ""
            pressable: visible
            text: card.actText
            name: qsTr("%1: %2").arg(card.actText).arg(card.title)
            onClicked: card.acted()
        }
    }
}
