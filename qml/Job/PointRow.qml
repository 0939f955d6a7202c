// PointRow: one thing that is still open, with its shape: pressed it leads to where it is closed, or
// has an act of its own. words; shape (ShapeKind); act: words of the act, "" none; opens: it can be
// pressed. Signals: clicked, acted.
import QtQuick
import Jambline.Theme

PaperCard {
    id: row

    property string words: ""
    property int shape: ShapeKind.NotYet
    property string act: ""
    property bool opens: false

    signal acted

    pressable: opens
    name: qsTr("%1. Opens it.").arg(words)

    Column {
        width: parent.width
        spacing: 6

        Item {
            width: parent.width
            height: Math.max(mark.height, said.height)

            StateShape {
                id: mark
                anchors.verticalCenter: parent.verticalCenter
                kind: row.shape
                key: row.words
                size: 24
            }
            Words {
                id: said
                x: mark.width + 12
                width: parent.width - x - (on.visible ? on.width + 8 : 0)
                anchors.verticalCenter: parent.verticalCenter
                text: row.words
                mute: row.opens
                bold: row.shape === ShapeKind.Must
            }
            Icon {
                id: on
                visible: row.opens
                anchors.right: parent.right
                anchors.verticalCenter: parent.verticalCenter
                source: "forward"
            }
        }
        PlainButton {
            objectName: "pointAct"
            width: Math.min(parent.width, Math.max(implicitWidth, 200))
            visible: row.act !== ""
            pressable: visible
            text: row.act
            name: qsTr("%1: %2").arg(row.words).arg(row.act)
            onClicked: row.acted()
        }
    }
}
