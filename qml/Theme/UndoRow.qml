// UndoRow: what was done, and Undo. text ("Nib 6 placed"); shape (ShapeKind) before it; middleText:
// one more act ("Kind"), empty hides it. mode: UndoRow.Fresh (Undo), Withdrawn (the undo can be
// undone: "Put back"), AmendOnly ("Amend"). Signals: undone, middle. 72 high, grows with its words.
import QtQuick
import Jambline.Theme

PaperCard {
    id: row

    enum Mode { Fresh, Withdrawn, AmendOnly }

    property string text: ""
    property int shape: ShapeKind.None
    property string middleText: ""
    property int mode: UndoRow.Fresh

    readonly property string undoText: mode === UndoRow.Fresh ? qsTr("Undo")
        : mode === UndoRow.Withdrawn ? qsTr("Put back") : qsTr("Amend")
    readonly property bool folded: said.natural + acts.wanted + 56 > width && said.natural > width * 0.4

    signal undone
    signal middle

    name: text
    padding: 0
    implicitWidth: 380
    minimumHeight: Theme.touch

    Flow {
        width: parent.width

        Item {
            width: row.folded ? row.width : row.width - acts.wanted
            height: Math.max(row.folded ? 0 : undo.implicitHeight, said.implicitHeight + 20)

            StateShape {
                id: mark
                x: 12
                anchors.verticalCenter: parent.verticalCenter
                kind: row.shape
                key: row.text
            }
            Words {
                id: said
                anchors.verticalCenter: parent.verticalCenter
                x: row.shape === ShapeKind.None ? 16 : 46
                width: parent.width - x - 8
                text: row.text
            }
        }
        Row {
            id: acts

            height: row.folded ? undo.implicitHeight : Math.max(undo.implicitHeight, said.implicitHeight + 20)

            readonly property real wanted: undo.implicitWidth + (other.visible ? other.implicitWidth : 0) + 4

            Rectangle {
                visible: other.visible && !row.folded
                width: 1.2
                height: 52
                y: (acts.height - height) / 2
                color: Theme.chalk
            }
            PlainButton {
                id: other
                objectName: "undoMiddle"
                bare: true
                height: acts.height
                visible: row.middleText !== ""
                pressable: visible
                width: row.folded ? row.width / 2 : implicitWidth
                text: row.middleText
                onClicked: row.middle()
            }
            Rectangle {
                visible: !row.folded
                width: 1.2
                height: 52
                y: (acts.height - height) / 2
                color: Theme.chalk
            }
            PlainButton {
                id: undo
                objectName: "undoAct"
                bare: true
                height: acts.height
                beside: true
                width: row.folded && other.visible ? row.width / 2 : implicitWidth
                text: row.undoText
                name: qsTr("%1: %2").arg(row.undoText).arg(row.text)
                iconName: row.mode === UndoRow.AmendOnly ? "pencil" : "undo"
                onClicked: row.undone()
            }
        }
    }
}
