// FactCard: a thing and what is said of it, one line each; kind: a shape before it (ShapeKind.None:
// none); act: words of a button at its foot (empty: none). Signal: acted.
import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    property string title: ""
    property string facts: ""
    property string more: ""
    property int kind: ShapeKind.None
    property string act: ""
    property string actName: act

    signal acted

    padding: 10

    Column {
        width: parent.width
        spacing: 4

        Item {
            width: parent.width
            height: Math.max(mark.height, words.height)

            StateShape {
                id: mark
                kind: card.kind
                size: card.kind === ShapeKind.None ? 0 : 22
                key: card.title
                anchors.verticalCenter: parent.verticalCenter
            }
            Column {
                id: words
                x: card.kind === ShapeKind.None ? 0 : mark.width + 10
                width: parent.width - x
                spacing: 2

                Words {
                    width: parent.width
                    text: card.title
                    bold: true
                }
                Words {
                    width: parent.width
                    visible: text !== ""
                    text: card.facts
                    size: Theme.note
                    color: Theme.pencil
                }
                Words {
                    width: parent.width
                    visible: text !== ""
                    text: card.more
                    size: Theme.note
                    color: Theme.pencil
                }
            }
        }
        PlainButton {
            objectName: "factAct"
            width: Math.min(parent.width, Math.max(implicitWidth, 260))
            visible: card.act !== ""
            pressable: visible
            text: card.act
            name: card.actName
            onClicked: card.acted()
        }
    }
}
