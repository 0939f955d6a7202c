// LookSight: one picture under a finger: pinch, wheel, double tap, + - 0 and move; a drag sideways on
// all of it turns to the next. tool: 0 none, 1 circle, 2 arrow, 3 text; then a drag draws and a tap
// asks for words. look: the view model. Signals: textAsked(x, y) in parts of the picture.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Item {
    id: sight

    required property LookViewModel look
    property int tool: 0
    readonly property alias drawing: picture

    signal textAsked(real x, real y)

    function zoomBy(factor: real) {
        picture.zoomBy(factor, width / 2, height / 2);
    }
    function zoomKey(key: int): bool {
        if (key === Qt.Key_Plus || key === Qt.Key_Equal)
            zoomBy(1.5);
        else if (key === Qt.Key_Minus)
            zoomBy(1 / 1.5);
        else if (key === Qt.Key_0)
            picture.fit();
        else
            return false;
        return true;
    }
    function panKey(key: int): bool {
        const dx = key === Qt.Key_Left ? 60 : key === Qt.Key_Right ? -60 : 0;
        const dy = key === Qt.Key_Up ? 60 : key === Qt.Key_Down ? -60 : 0;
        if (picture.zoom <= 1.001 || (dx === 0 && dy === 0))
            return false;
        picture.panBy(dx, dy);
        return true;
    }

    clip: true
    Accessible.role: Accessible.Graphic
    Accessible.name: picture.trouble !== "" ? qsTr("%1, %2").arg(look.title).arg(picture.trouble) : look.title

    LookItem {
        id: picture
        objectName: "lookPicture"
        anchors.fill: parent
        look: sight.look
        whole: true
        checked: true
        ground: Theme.sheet
        hatch: Theme.edge
        line: Theme.oxide
        halo: Theme.sheet
        ink: Theme.ink
        family: Theme.family
        textPx: Theme.body
    }
    PictureTrouble {
        anchors.horizontalCenter: parent.horizontalCenter
        y: picture.standsIn ? sight.height - height - 8 : (sight.height - height) / 2
        most: parent.width - 8
        text: picture.trouble
    }
    PinchArea {
        property real last: 1

        anchors.fill: parent
        onPinchStarted: {
            last = 1;
            touch.drop();
        }
        onPinchUpdated: pinch => {
            picture.zoomBy(pinch.scale / last, pinch.center.x, pinch.center.y);
            picture.panBy(pinch.center.x - pinch.previousCenter.x, pinch.center.y - pinch.previousCenter.y);
            last = pinch.scale;
        }

        MouseArea {
            id: touch
            objectName: "lookTouch"

            property real fromX: 0
            property real fromY: 0
            property real lastX: 0
            property real lastY: 0
            property bool down: false
            property bool far: false

            function drop() {
                down = false;
                far = false;
                picture.dropNote();
            }

            anchors.fill: parent
            preventStealing: sight.tool !== 0 || picture.zoom > 1.001
            onPressed: mouse => {
                fromX = lastX = mouse.x;
                fromY = lastY = mouse.y;
                down = true;
                far = false;
                if (sight.tool === 1 || sight.tool === 2)
                    picture.startNote(sight.tool - 1, mouse.x, mouse.y);
            }
            onPositionChanged: mouse => {
                if (!down)
                    return;
                if (Math.hypot(mouse.x - fromX, mouse.y - fromY) > Theme.slip)
                    far = true;
                if (sight.tool === 1 || sight.tool === 2)
                    picture.moveNote(mouse.x, mouse.y);
                else if (far && picture.zoom > 1.001)
                    picture.panBy(mouse.x - lastX, mouse.y - lastY);
                lastX = mouse.x;
                lastY = mouse.y;
            }
            onReleased: mouse => {
                if (!down)
                    return;
                down = false;
                if (sight.tool === 1 || sight.tool === 2) {
                    picture.keepNote();
                } else if (sight.tool === 3 && !far) {
                    const at = picture.toPicture(mouse.x, mouse.y);
                    sight.textAsked(at.x, at.y);
                } else if (sight.tool === 0 && far && picture.zoom <= 1.001 && Math.abs(mouse.x - fromX) > 72) {
                    if (mouse.x < fromX)
                        sight.look.next();
                    else
                        sight.look.previous();
                }
            }
            onCanceled: drop()
            onDoubleClicked: mouse => {
                if (sight.tool !== 0)
                    return;
                if (picture.zoom > 1.001)
                    picture.fit();
                else
                    picture.zoomBy(3, mouse.x, mouse.y);
            }
            onWheel: wheel => picture.zoomBy(Math.pow(1.0015, wheel.angleDelta.y), wheel.x, wheel.y)
        }
    }
}
