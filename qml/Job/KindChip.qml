// KindChip: one kind of defect to pick: its drawing and its word. kind: job::DefectKind, -1: other.
// chosen: ink outline and foot. Signal: clicked. 72 high and up.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Pressable {
    id: chip

    property int kind: -1
    property string text: ""
    property bool chosen: false

    name: text
    implicitWidth: Math.max(Theme.touch, label.natural + 16)
    implicitHeight: Math.max(Theme.touch, picture.height + label.implicitHeight + 22)
    Accessible.role: Accessible.RadioButton
    Accessible.checkable: true
    Accessible.checked: chosen

    Rectangle {
        anchors.fill: parent
        radius: Theme.corner
        color: chip.pressed ? Theme.paper : Theme.sheet
        border.width: chip.chosen ? Theme.lineSelected : Theme.line
        border.color: chip.chosen ? Theme.ink : Theme.edge
    }
    Rectangle {
        visible: chip.chosen
        anchors { left: parent.left; right: parent.right; bottom: parent.bottom }
        height: Theme.foot
        radius: Theme.corner / 2
        color: Theme.ink
    }
    Column {
        anchors.centerIn: parent
        anchors.verticalCenterOffset: chip.chosen ? -2 : 0
        width: parent.width - 8
        spacing: 4

        KindItem {
            id: picture
            anchors.horizontalCenter: parent.horizontalCenter
            width: 24
            height: 24
            kind: chip.kind
            color: Theme.ink
        }
        Words {
            id: label
            width: parent.width
            horizontalAlignment: Text.AlignHCenter
            text: chip.text
            mute: true
            bold: chip.chosen
            size: Theme.small
        }
    }
}
