// CountdownRow: a time that is nearly over, or over and not logged: in the place of the undo row, on
// every screen. words; shape (ShapeKind). Signal: clicked, to the booth that it is about.
import QtQuick
import Jambline.Theme

PaperCard {
    id: row

    property string words: ""
    property int shape: ShapeKind.None
    property bool over: false

    pressable: visible
    name: words
    side: true
    footColor: over ? Theme.ochre : Theme.oxide
    minimumHeight: Theme.touch
    Accessible.role: Accessible.AlertMessage

    Item {
        width: parent.width
        height: Math.max(mark.height, said.height)

        StateShape {
            id: mark
            x: 4
            anchors.verticalCenter: parent.verticalCenter
            kind: row.shape
            size: 26
        }
        Words {
            id: said
            x: 42
            width: parent.width - x - go.width - 8
            anchors.verticalCenter: parent.verticalCenter
            text: row.words
            mute: true
            bold: true
            size: Theme.lead
        }
        Icon {
            id: go
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            source: "forward"
        }
    }
}
