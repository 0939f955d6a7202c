// Lanes: a time line in lanes with a handle. name is spoken. lanes: rows with `name` and `spans`,
// spans with `from`, `to` (same unit as start, end) and `look`: Lanes.Solid, Here (blue), Waits
// (hatched), Tick (one moment at `from`). marks: [{at, text}] drawn over all lanes (days, promises).
// position: the handle (settable); handleText beside it. step: what an arrow key moves; 0: the owner
// steps, by stepAsked(by), Home and End by as much as there can be, and sets position. Of marks, one
// that is `low` has its words below the others'. Signal: moved(position). 34 dp a lane; drag, arrows, Home and End move the handle.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme

Item {
    id: board

    enum Look { Solid, Here, Waits, Tick }

    required property string name
    property var lanes: []
    property var marks: []
    property real start: 0
    property real end: 1
    property real position: start
    property real step: (end - start) / 100
    property string handleText: ""
    property string emptyText: qsTr("Nothing happened yet")
    readonly property bool over: longest.width + 16 > width * 0.4
    readonly property real lineHeight: Math.round((Theme.note + 8) * Theme.textScale)
    readonly property real barHeight: Math.round(34 * Theme.textScale)
    readonly property real laneHeight: barHeight + (over ? lineHeight : 0)
    readonly property bool low: Array.from(marks).some(mark => mark.low ?? false)
    readonly property real headHeight: marks.length > 0 ? lineHeight * (low ? 2 : 1) + 4 : 4
    // Words of marks that would lie on those of the one before are left out; its line stays.
    readonly property var labelled: {
        let until = -1;
        return Array.from(marks).map(mark => {
            const x = xOf(mark.at);
            if (!(mark.low ?? false) && x < until)
                return false;
            if (!(mark.low ?? false))
                until = x + 12 + mark.text.length * Theme.note * Theme.textScale * 0.6;
            return true;
        });
    }
    readonly property real labelWidth: over ? 0 : longest.width + 16
    readonly property real reach: width - labelWidth - 8

    signal moved(real position)
    signal stepAsked(int by)

    readonly property int far: 1000000

    function xOf(at: real): real {
        return labelWidth + (end > start ? Math.max(0, Math.min(1, (at - start) / (end - start))) : 0) * reach;
    }

    function moveTo(at: real) {
        const next = Math.max(start, Math.min(end, at));
        if (next === position)
            return;
        if (step !== 0)
            position = next;
        moved(next);
    }

    implicitWidth: 380
    implicitHeight: headHeight + Math.max(1, lanes.length) * laneHeight + 34 * Theme.textScale + (told.natural > width ? lineHeight : 0)
    activeFocusOnTab: true
    Accessible.role: Accessible.Slider
    Accessible.name: handleText === "" ? name : qsTr("%1, %2").arg(name).arg(handleText)
    Accessible.focusable: true
    Accessible.onIncreaseAction: step === 0 ? stepAsked(1) : moveTo(position + step)
    Accessible.onDecreaseAction: step === 0 ? stepAsked(-1) : moveTo(position - step)

    function hopped(event): bool {
        const hop = event.modifiers & Qt.ShiftModifier ? 10 : 1;
        const by = event.key === Qt.Key_Right ? hop : event.key === Qt.Key_Left ? -hop
            : event.key === Qt.Key_Home ? -far : event.key === Qt.Key_End ? far : 0;
        if (by !== 0)
            stepAsked(by);
        return by !== 0;
    }

    Keys.onPressed: event => {
        if (step === 0) {
            event.accepted = hopped(event);
            return;
        }
        const hop = event.modifiers & Qt.ShiftModifier ? 10 * step : step;
        if (event.key === Qt.Key_Right)
            moveTo(position + hop);
        else if (event.key === Qt.Key_Left)
            moveTo(position - hop);
        else if (event.key === Qt.Key_Home)
            moveTo(start);
        else if (event.key === Qt.Key_End)
            moveTo(end);
        else
            return;
        event.accepted = true;
    }

    Column {
        id: longest
        visible: false
        Repeater {
            model: board.lanes
            Words {
                required property var modelData
                text: modelData.name
                wrapMode: Text.NoWrap
                mute: true
            }
        }
    }
    Repeater {
        model: board.marks

        Item {
            id: mark
            required property int index
            required property var modelData
            readonly property bool low: modelData.low ?? false
            x: board.xOf(modelData.at)
            height: board.headHeight + board.lanes.length * board.laneHeight

            Rectangle {
                width: 1
                height: parent.height
                color: mark.low ? Theme.ink : Theme.chalk
            }
            Words {
                x: Math.min(4, board.width - mark.x - implicitWidth)
                y: mark.low ? board.lineHeight : 0
                visible: board.labelled[mark.index] ?? false
                text: mark.modelData.text
                size: Theme.note
                color: Theme.pencil
                wrapMode: Text.NoWrap
            }
        }
    }
    Repeater {
        model: board.lanes

        Item {
            id: lane
            required property int index
            required property var modelData
            y: board.headHeight + index * board.laneHeight
            width: board.width
            height: board.laneHeight

            Words {
                width: board.over ? board.width : board.labelWidth - 8
                height: board.over ? board.lineHeight : parent.height
                verticalAlignment: Text.AlignVCenter
                text: lane.modelData.name
                size: board.over ? Theme.note : Theme.body
                wrapMode: Text.NoWrap
                elide: Text.ElideRight
            }
            Rectangle {
                anchors.bottom: parent.bottom
                x: board.labelWidth
                width: board.reach
                height: 1
                color: Theme.chalk
            }
            Repeater {
                model: lane.modelData.spans

                Rectangle {
                    id: span
                    required property var modelData
                    readonly property int look: modelData.look
                    x: board.xOf(modelData.from)
                    y: lane.height - (board.barHeight + height) / 2
                    width: look === Lanes.Tick ? 1.6 : Math.max(look === Lanes.Here ? 6 : 2, board.xOf(modelData.to) - x)
                    height: look === Lanes.Waits || look === Lanes.Tick ? 18 : 14
                    color: look === Lanes.Here ? Theme.blue : look === Lanes.Waits ? "transparent" : Theme.ink
                    border.width: look === Lanes.Waits ? 1 : 0
                    border.color: Theme.edge

                    Hatch {
                        x: 1
                        y: 1
                        width: Math.max(4, parent.width - 2)
                        height: Math.max(4, parent.height - 2)
                        visible: span.look === Lanes.Waits && span.width > 4
                    }
                }
            }
        }
    }
    Words {
        visible: board.lanes.length === 0
        y: board.headHeight
        text: board.emptyText
        color: Theme.pencil
    }
    Item {
        id: handle
        objectName: "lanesHandle"
        visible: board.lanes.length > 0
        x: board.xOf(board.position)
        y: board.headHeight - 4
        height: board.lanes.length * board.laneHeight + 8

        Rectangle {
            x: -1
            width: 2
            height: parent.height
            color: Theme.blue
        }
        Rectangle {
            x: -8
            y: parent.height
            width: 16
            height: 12
            color: Theme.blue
        }
        Rectangle {
            x: -6
            y: parent.height + 6
            width: 12
            height: 12
            rotation: 45
            color: Theme.blue
        }
        Words {
            id: told
            readonly property bool flipped: handle.x + 16 + width > board.width
            readonly property bool crowded: flipped && handle.x < 16 + width
            x: crowded ? -handle.x : flipped ? -16 - width : 16
            y: parent.height - 1 + (crowded ? 18 : 0)
            width: Math.min(natural, board.width)
            text: board.handleText
            mute: true
            bold: true
            size: Theme.note
        }
    }
    MouseArea {
        anchors.fill: parent
        enabled: board.lanes.length > 0
        preventStealing: true
        onPressed: mouse => board.moveTo(board.start + (mouse.x - board.labelWidth) / board.reach * (board.end - board.start))
        onPositionChanged: mouse => board.moveTo(board.start + (mouse.x - board.labelWidth) / board.reach * (board.end - board.start))
    }
    FocusRing {}
}
