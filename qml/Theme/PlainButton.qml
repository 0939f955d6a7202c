// PlainButton: every other act. text; secondLine below it; shape (ShapeKind) or iconName above it,
// or beside it when `beside`; `glyph` may be any small component instead. chosen: ink outline and
// foot. dashed: not possible now (a press gives refused()). bare: no outline, for use inside a row.
// Signals: clicked, refused, held. At least 72 x 72 (desk 44), grows with its words.
// A button that makes no sense is hidden, not grayed.
import QtQuick
import Jambline.Theme
import QtQuick.Layouts

Pressable {
    id: button

    property string text: ""
    property string secondLine: ""
    property string iconName: ""
    property int shape: ShapeKind.None
    property string shapeKey: text
    property Component glyph: null
    property bool beside: Theme.desk
    property bool chosen: false
    property bool dashed: false
    property bool bare: false
    property color textColor: Theme.ink
    property int textSize: Theme.body

    readonly property bool pictured: glyph !== null || iconName !== "" || shape !== ShapeKind.None
    readonly property bool stacked: !beside

    name: secondLine === "" ? text : qsTr("%1, %2").arg(text).arg(secondLine)
    refusing: dashed
    implicitWidth: Math.max(Theme.touch, inner.wanted + 20)
    implicitHeight: Math.max(Theme.touch, inner.implicitHeight + 16)
    Layout.fillWidth: true
    Layout.preferredWidth: 60
    Layout.fillHeight: true
    Accessible.checkable: chosen
    Accessible.checked: chosen

    Rectangle {
        anchors.fill: parent
        visible: !button.bare || button.pressed
        radius: Theme.corner
        color: button.pressed ? Theme.paper : Theme.sheet
        border.width: button.dashed || button.bare ? 0 : button.chosen ? Theme.lineSelected : Theme.line
        border.color: button.chosen ? Theme.ink : Theme.edge
    }
    DashFrame {
        anchors.fill: parent
        visible: button.dashed
        color: Theme.edge
        radius: Theme.corner
    }
    Rectangle {
        visible: button.chosen
        anchors { left: parent.left; right: parent.right; bottom: parent.bottom }
        height: Theme.foot
        radius: Theme.corner / 2
        color: Theme.ink
    }
    Grid {
        id: inner

        readonly property real room: button.width - 16
                                     - (button.stacked || !button.pictured ? 0 : picture.width + columnSpacing)
        readonly property real wanted: Math.max(label.natural, note.natural)
                                       + (button.stacked || !button.pictured ? 0 : picture.width + columnSpacing)

        anchors.centerIn: parent
        anchors.verticalCenterOffset: button.chosen ? -2 : 0
        columns: button.stacked || !button.pictured ? 1 : 2
        rowSpacing: 6
        columnSpacing: 10
        horizontalItemAlignment: Grid.AlignHCenter
        verticalItemAlignment: Grid.AlignVCenter

        Item {
            id: picture
            visible: button.pictured
            width: Math.max(mark.width, icon.visible ? icon.width : 0, custom.width)
            height: Math.max(mark.height, icon.visible ? icon.height : 0, custom.height)

            StateShape {
                id: mark
                anchors.centerIn: parent
                kind: button.shape
                key: button.shapeKey
                size: 22
            }
            Icon {
                id: icon
                anchors.centerIn: parent
                visible: button.iconName !== ""
                source: button.iconName
                color: button.textColor
            }
            Loader {
                id: custom
                anchors.centerIn: parent
                sourceComponent: button.glyph
            }
        }
        Column {
            spacing: 2

            Words {
                id: label
                width: Math.max(1, Math.min(inner.room, Math.max(natural, note.natural)))
                horizontalAlignment: Text.AlignHCenter
                text: button.text
                mute: true
                bold: true
                visible: text !== ""
                size: button.textSize
                color: button.textColor
            }
            Words {
                id: note
                width: label.width
                horizontalAlignment: Text.AlignHCenter
                visible: text !== ""
                text: button.secondLine
                mute: true
                size: Theme.small
                color: Theme.pencil
            }
        }
    }
}
