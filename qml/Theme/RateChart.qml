// RateChart: counts over time with their limits and events; see RatePaper for what it shows.
// name (one spoken sentence) must be set; chosenWords says the chosen point. unitWords above.
// Drag moves, pinch and Ctrl with the wheel zoom, a press chooses the nearest point. Keys: Left,
// Right and Home, End choose; Shift with Left, Right moves; + and - zoom, 0 shows all; Enter opens.
// Signals: picked(point) (-1: none), opened(point).
import QtQuick
import QtQuick.Shapes
import Jambline.Theme

FocusScope {
    id: chart

    required property string name
    property string unitWords: ""
    property string chosenWords: ""
    property alias days: paper.days
    property alias rates: paper.rates
    property alias lows: paper.lows
    property alias highs: paper.highs
    property alias centers: paper.centers
    property alias looks: paper.looks
    property alias flagDays: paper.flagDays
    property alias flagWords: paper.flagWords
    property alias flagStrong: paper.flagStrong
    property alias chosen: paper.chosen
    readonly property alias paper: paper
    readonly property bool near: paper.near

    signal picked(int point)
    signal opened(int point)

    function zoomBy(factor: real) {
        paper.zoomBy(factor, chosen >= 0 ? paper.placeOf(chosen).x : paper.width / 2);
    }
    function whole() {
        paper.whole();
    }
    function choose(point: int) {
        const last = days.length - 1;
        if (last < 0)
            return;
        picked(Math.max(0, Math.min(last, point)));
        paper.show(chosen);
    }

    implicitWidth: 380
    implicitHeight: 280
    activeFocusOnTab: true
    Accessible.role: Accessible.Graphic
    Accessible.name: name
    Accessible.description: chosenWords
    Accessible.focusable: true

    Keys.onPressed: event => {
        const shifted = event.modifiers & Qt.ShiftModifier;
        const step = paper.width / 6;
        if (event.key === Qt.Key_Left && shifted)
            paper.moveBy(step);
        else if (event.key === Qt.Key_Right && shifted)
            paper.moveBy(-step);
        else if (event.key === Qt.Key_Left)
            choose(chosen < 0 ? days.length - 1 : chosen - 1);
        else if (event.key === Qt.Key_Right)
            choose(chosen + 1);
        else if (event.key === Qt.Key_Home)
            choose(0);
        else if (event.key === Qt.Key_End)
            choose(days.length - 1);
        else if (event.key === Qt.Key_Plus || event.key === Qt.Key_Equal)
            zoomBy(1.5);
        else if (event.key === Qt.Key_Minus)
            zoomBy(1 / 1.5);
        else if (event.key === Qt.Key_0)
            whole();
        else if ((event.key === Qt.Key_Return || event.key === Qt.Key_Enter) && chosen >= 0)
            opened(chosen);
        else
            return;
        event.accepted = true;
    }

    Words {
        id: unit
        text: chart.unitWords
        mute: true
        width: parent.width
        size: Theme.note
        color: Theme.pencil
    }
    Shape {
        y: paper.y
        width: paper.width
        height: paper.height

        ShapePath {
            strokeWidth: -1
            fillColor: Theme.steel

            PathPolyline { path: paper.bandOutline }
        }
        ShapePath {
            strokeWidth: 2
            strokeColor: Theme.ink
            fillColor: "transparent"
            capStyle: ShapePath.FlatCap

            PathMultiline { paths: paper.middleLines }
        }
    }
    RatePaper {
        id: paper
        y: unit.text === "" ? 0 : unit.height + 4
        width: parent.width
        height: parent.height - y
        family: Theme.family
        size: Theme.note
        ink: Theme.ink
        pencil: Theme.pencil
        grid: Theme.chalk
        edge: Theme.edge
        ground: Theme.sheet
        more: Theme.oxide
        less: Theme.green
        here: Theme.blue
        flag: Theme.tape
        Accessible.ignored: true
    }
    PinchArea {
        property real last: 1

        anchors.fill: paper
        onPinchStarted: {
            last = 1;
            touch.drop();
        }
        onPinchUpdated: pinch => {
            paper.zoomBy(pinch.scale / last, pinch.center.x);
            paper.moveBy(pinch.center.x - pinch.previousCenter.x);
            last = pinch.scale;
        }

        MouseArea {
            id: touch
            objectName: "chartTouch"

            property real fromX: 0
            property real fromY: 0
            property real lastX: 0
            property bool near: false
            property bool moving: false

            function drop() {
                near = false;
                moving = false;
            }

            anchors.fill: parent
            preventStealing: moving
            onPressed: mouse => {
                chart.forceActiveFocus();
                fromX = lastX = mouse.x;
                fromY = mouse.y;
                near = true;
                moving = false;
            }
            onPositionChanged: mouse => {
                if (Math.hypot(mouse.x - fromX, mouse.y - fromY) > Theme.slip)
                    near = false;
                if (chart.near && Math.abs(mouse.x - fromX) > Theme.slip)
                    moving = true;
                if (moving)
                    paper.moveBy(mouse.x - lastX);
                lastX = mouse.x;
            }
            onReleased: mouse => {
                if (near)
                    chart.picked(paper.at(fromX, fromY));
                drop();
            }
            onCanceled: drop()
            onWheel: wheel => {
                wheel.accepted = (wheel.modifiers & Qt.ControlModifier) !== 0;
                if (wheel.accepted)
                    paper.zoomBy(Math.pow(1.0015, wheel.angleDelta.y), wheel.x);
            }
        }
    }
    FocusRing {
        shown: chart.activeFocus
    }
}
