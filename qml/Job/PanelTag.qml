// PanelTag: what stands on one panel of the car's pattern: its shape, its name where it fits, the
// tape of the next one. Silent to the finger (the map picks), named for the reader.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Item {
    id: tag

    required property PatternMap on
    required property string panel
    required property string title
    required property string shortTitle
    required property int look
    required property int marks
    required property bool isNext
    required property bool noCut
    required property string spoken
    required property real xMm
    required property real yMm
    required property real roomMm
    required property real boxXMm
    required property real boxYMm
    required property real boxWidthMm
    required property real boxHeightMm

    readonly property real scale_px: on.pattern.pxPerMm
    readonly property real room: roomMm * scale_px
    readonly property real tall: boxHeightMm * scale_px
    readonly property bool roomy: Math.min(boxWidthMm, boxHeightMm) * scale_px > 30
    readonly property bool named: roomy && name.natural + 6 <= room * 0.92
    readonly property bool stacked: tall > 70 || shape.width + name.natural + 14 > room
    readonly property bool warned: noCut && roomy && stop.natural + 10 <= room

    signal asked(string panel)

    x: on.xPx(boxXMm)
    y: on.yPx(boxYMm + boxHeightMm)
    width: boxWidthMm * scale_px
    height: tall
    Accessible.role: Accessible.Button
    Accessible.name: spoken
    Accessible.focusable: true
    Accessible.onPressAction: asked(panel)
    activeFocusOnTab: true
    Keys.onReturnPressed: asked(panel)
    Keys.onSpacePressed: asked(panel)

    FocusRing {}

    Grid {
        id: inner
        visible: !next.visible
        x: tag.on.xPx(tag.xMm) - tag.x - width / 2
        y: tag.on.yPx(tag.yMm) - tag.y - height / 2
        columns: tag.stacked ? 1 : 2
        rowSpacing: 2
        columnSpacing: 7
        horizontalItemAlignment: Grid.AlignHCenter
        verticalItemAlignment: Grid.AlignVCenter

        LookShape {
            id: shape
            visible: tag.look !== PanelLook.NotYet && (tag.roomy || tag.marks > 0)
            look: tag.look
            marks: tag.marks
            size: 20
            key: tag.panel
        }
        StateShape {
            visible: tag.noCut
            kind: ShapeKind.Must
            size: 20
        }
        Rectangle {
            visible: tag.named
            width: name.width + (tag.look === PanelLook.NotYet ? 8 : 0)
            height: name.height
            radius: 2
            color: tag.look === PanelLook.NotYet ? Theme.paper : "transparent"

            Words {
                id: name
                anchors.centerIn: parent
                width: natural
                text: tag.shortTitle
                mute: true
                size: Theme.small
                wrapMode: Text.NoWrap
            }
        }
        Rectangle {
            visible: tag.warned
            width: stop.width + 6
            height: stop.height
            radius: 2
            color: Theme.paper

            Words {
                id: stop
                anchors.centerIn: parent
                width: natural
                text: qsTr("do not cut")
                mute: true
                bold: true
                size: Theme.small
                color: Theme.oxide
                wrapMode: Text.NoWrap
            }
        }
    }
    StateShape {
        visible: next.visible && tag.noCut
        x: next.x + (next.width - width) / 2
        y: next.y - height - 4
        kind: ShapeKind.Must
        size: 20
    }
    TapeLabel {
        id: next
        visible: tag.isNext
        x: Math.max(4 - tag.x, Math.min(tag.on.width - width - 4 - tag.x,
                                        tag.on.xPx(tag.xMm) - tag.x - width / 2))
        y: tag.on.yPx(tag.yMm) - tag.y - height / 2
        width: Math.max(says.natural, name.natural * Theme.note / Theme.small) + 34
        height: implicitHeight
        lift: 40
        textSize: Theme.small
        centered: true
        text: tag.noCut ? qsTr("Next, do not cut:") : qsTr("Next:")
        secondLine: tag.shortTitle
        key: tag.panel
        Accessible.ignored: true

        Words {
            id: says
            visible: false
            text: next.text
            bold: true
            size: Theme.small
        }
    }
}
