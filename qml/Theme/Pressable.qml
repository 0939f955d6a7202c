// Pressable: what every control that is pressed shares. Put the drawing inside it.
// name: what the screen reader says (must be set). pressable: false makes it a plain surface.
// guarded: a second press within 250 ms is ignored. refusing: a press gives refused() instead.
// holdable: 500 ms gives held(). pressed: read only.
// Acts on release; a slip over 12 dp gives up. Space and Enter press it; so does press(). One that is
// hidden lets go of the focus: Tab goes on from what holds it.
import QtQuick
import Jambline.Theme

Item {
    id: control

    property string name: ""
    property bool pressable: true
    property bool guarded: false
    property bool refusing: false
    property bool holdable: false
    property bool ringed: true
    readonly property bool pressed: area.armed && area.pressed

    signal clicked
    signal refused
    signal held

    function press() {
        const now = Date.now();
        if (!pressable || (guarded && now - area.last_ms < 250))
            return;
        area.last_ms = now;
        if (refusing)
            refused();
        else
            clicked();
    }

    activeFocusOnTab: pressable || activeFocus
    onVisibleChanged: if (!visible && activeFocus)
        focus = false
    Accessible.role: pressable ? Accessible.Button : Accessible.Grouping
    Accessible.name: name
    Accessible.focusable: pressable
    Accessible.ignored: !pressable && name === ""
    Accessible.onPressAction: control.press()

    Keys.onPressed: event => {
        const key = event.key;
        if (!control.pressable || (key !== Qt.Key_Space && key !== Qt.Key_Return && key !== Qt.Key_Enter))
            return;
        event.accepted = true;
        if (!event.isAutoRepeat)
            control.press();
    }

    MouseArea {
        id: area

        property real fromX: 0
        property real fromY: 0
        property bool armed: false
        property double last_ms: 0

        anchors.fill: parent
        enabled: control.pressable
        pressAndHoldInterval: 500
        onPressed: mouse => {
            fromX = mouse.x;
            fromY = mouse.y;
            armed = true;
        }
        onPositionChanged: mouse => {
            if (Math.hypot(mouse.x - fromX, mouse.y - fromY) > Theme.slip)
                armed = false;
        }
        onPressAndHold: {
            if (control.holdable && armed) {
                armed = false;
                control.held();
            }
        }
        onReleased: {
            if (armed)
                control.press();
            armed = false;
        }
        onCanceled: armed = false
    }

    FocusRing {
        shown: control.ringed && control.activeFocus
    }
}
