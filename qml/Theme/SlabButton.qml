// SlabButton: the one main act of a screen. text: the act in the trade's words; secondLine: where
// it leads, or why it waits. waits: dashed, not filled; a press gives refused(), the words say what
// it waits for; with holdable the hold gives held(). Signals: clicked, refused, held.
// Height 76 (desk 44), grows with its words. A second touch within 250 ms is ignored.
import QtQuick
import Jambline.Theme
import QtQuick.Layouts

Pressable {
    id: slab

    property string text: ""
    property string secondLine: ""
    property bool waits: false

    name: secondLine === "" ? text : qsTr("%1, %2").arg(text).arg(secondLine)
    guarded: true
    refusing: waits
    implicitWidth: Math.max(120, head.natural + 32, note.natural + 32)
    implicitHeight: Math.max(Theme.main, words.implicitHeight + 16)
    Layout.fillWidth: true
    Layout.preferredWidth: 100
    Layout.fillHeight: true

    Rectangle {
        anchors.fill: parent
        radius: Theme.corner
        color: slab.waits ? Theme.sheet : Theme.slab
        opacity: slab.pressed ? 0.82 : 1
    }
    DashFrame {
        anchors.fill: parent
        visible: slab.waits
        color: Theme.edge
        radius: Theme.corner
    }
    Column {
        id: words
        x: 12
        width: parent.width - 24
        anchors.verticalCenter: parent.verticalCenter
        spacing: 2

        Words {
            id: head
            width: parent.width
            horizontalAlignment: Text.AlignHCenter
            text: slab.text
            mute: true
            bold: true
            size: Theme.desk ? Theme.body : Theme.title
            color: slab.waits ? Theme.ink : Theme.slabInk
        }
        Words {
            id: note
            width: parent.width
            horizontalAlignment: Text.AlignHCenter
            visible: text !== ""
            text: slab.secondLine
            mute: true
            size: Theme.desk ? Theme.small : Theme.note
            color: slab.waits ? Theme.pencil : Theme.slabInk
        }
    }
}
