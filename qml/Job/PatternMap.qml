// PatternMap: the car's pattern, or one panel of it, under a finger. panel: "" the car. Put what
// lies on it inside; a child at (map.xPx(xMm), map.yPx(yMm)) stays on its millimetre.
// Pinch, wheel, drag, + - 0 zoom and move. grips: function (xMm, yMm) -> key of what can be dragged
// there, or ""; a drag over 16 dp then gives dragging and dropped, else it moves the map. past, then:
// the panels as they were (PatternItem).
// Signals: tapped(xMm, yMm, xPx, yPx) on release within 12 dp, pressedAt, dragging, dropped.
pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Window
import Jambline.Theme
import Jambline.Screens

Item {
    id: map

    required property InspectViewModel inspect
    property string panel: ""
    property string chosen: ""
    property bool still: false
    property bool past: false
    property var then: ({})
    property real inset: 8
    property var grips: (xMm, yMm) => ""
    default property alias content: over.data

    readonly property alias pattern: drawing
    readonly property alias pressed: touch.near
    readonly property alias fingerX: touch.fromX
    readonly property alias fingerY: touch.fromY

    signal tapped(real xMm, real yMm, real xPx, real yPx)
    signal dragging(string key, real xMm, real yMm)
    signal dropped(string key, real xMm, real yMm)

    function xPx(xMm: real): real {
        return drawing.originX + xMm * drawing.pxPerMm;
    }
    function yPx(yMm: real): real {
        return drawing.originY - yMm * drawing.pxPerMm;
    }
    function zoomBy(factor: real) {
        drawing.zoomBy(factor, width / 2, height / 2);
    }
    function zoomKey(event): bool {
        if (event.key === Qt.Key_Plus || event.key === Qt.Key_Equal)
            zoomBy(1.5);
        else if (event.key === Qt.Key_Minus)
            zoomBy(1 / 1.5);
        else if (event.key === Qt.Key_0)
            drawing.fit();
        else
            return false;
        return true;
    }

    clip: drawing.zoom > 1.001

    CarTint {
        id: paint
        car: map.inspect.carColor === "" ? Theme.steel : map.inspect.carColor
        dark: Theme.dark
    }
    PatternItem {
        id: drawing
        anchors.fill: parent
        inspect: map.inspect
        panel: map.panel
        chosen: map.chosen
        small: map.still && !map.past
        past: map.past
        then: map.then
        inset: map.inset
        tint: paint.tint
        ground: Theme.paper
        outline: Theme.dark ? Theme.pencil : Theme.ink
        crease: Theme.pencil
        edge: Theme.edge
        quiet: Theme.chalk
        masked: Theme.tape
        here: Theme.blue
    }
    PinchArea {
        property real last: 1

        anchors.fill: parent
        enabled: !map.still
        onPinchStarted: {
            last = 1;
            touch.drop();
        }
        onPinchUpdated: pinch => {
            drawing.zoomBy(pinch.scale / last, pinch.center.x, pinch.center.y);
            drawing.moveBy(pinch.center.x - pinch.previousCenter.x, pinch.center.y - pinch.previousCenter.y);
            last = pinch.scale;
        }

        MouseArea {
            id: touch

            property real fromX: 0
            property real fromY: 0
            property real lastX: 0
            property real lastY: 0
            property bool near: false
            property bool far: false
            property string held: ""

            function drop() {
                near = false;
                far = false;
                held = "";
            }

            anchors.fill: parent
            enabled: !map.still
            preventStealing: drawing.zoom > 1.001 || held !== ""
            onPressed: mouse => {
                const edge = mapToItem(null, mouse.x, mouse.y).x;
                const room = Window.window ? Window.window.width : width;
                if (mouse.source !== Qt.MouseEventNotSynthesized && (edge < 8 || edge > room - 8)) {
                    mouse.accepted = false;
                    return;
                }
                fromX = lastX = mouse.x;
                fromY = lastY = mouse.y;
                near = true;
                far = false;
                const at = drawing.toMm(mouse.x, mouse.y);
                held = map.grips(at.x, at.y);
            }
            onPositionChanged: mouse => {
                const away = Math.hypot(mouse.x - fromX, mouse.y - fromY);
                if (away > Theme.slip)
                    near = false;
                if (away > 16)
                    far = true;
                if (far && held !== "") {
                    const at = drawing.toMm(mouse.x, mouse.y);
                    map.dragging(held, at.x, at.y);
                } else if (far) {
                    drawing.moveBy(mouse.x - lastX, mouse.y - lastY);
                }
                lastX = mouse.x;
                lastY = mouse.y;
            }
            onReleased: mouse => {
                const at = drawing.toMm(mouse.x, mouse.y);
                if (near) {
                    const down = drawing.toMm(fromX, fromY);
                    map.tapped(down.x, down.y, fromX, fromY);
                } else if (far && held !== "") {
                    map.dropped(held, at.x, at.y);
                }
                drop();
            }
            onCanceled: {
                if (held !== "")
                    map.dropped("", 0, 0);
                drop();
            }
            onWheel: wheel => drawing.zoomBy(Math.pow(1.0015, wheel.angleDelta.y), wheel.x, wheel.y)
        }
    }
    Item {
        id: over
        anchors.fill: parent
    }
}
