// FitSpot: one point of an edge on the map: its number, filled when its gap is known, with an oxide
// outline when that is off. Silent to the finger (the map picks the nearest), named for the reader.
// Signal: asked(key).
import QtQuick
import Jambline.Theme

Item {
    id: spot

    required property PatternMap on
    required property int key
    required property int number
    required property real xMm
    required property real yMm
    required property string spoken
    required property bool chosen
    required property bool ofEdge
    required property bool off
    required property bool known
    readonly property real side: ofEdge ? Math.max(26, figure.height + 4) : 12

    signal asked(int key)

    objectName: "fitSpot" + key
    x: on.xPx(xMm) - width / 2
    y: on.yPx(yMm) - height / 2
    z: chosen ? 2 : ofEdge ? 1 : 0
    width: side
    height: side
    Accessible.role: Accessible.Button
    Accessible.name: spoken
    Accessible.focusable: true
    Accessible.onPressAction: asked(key)
    activeFocusOnTab: true
    Keys.onReturnPressed: asked(key)
    Keys.onSpacePressed: asked(key)

    FocusRing {}

    Rectangle {
        anchors.fill: parent
        radius: width / 2
        color: spot.chosen ? Theme.blue : spot.known ? Theme.ink : Theme.sheet
        border.width: spot.off ? 3 : Theme.line
        border.color: spot.off ? Theme.oxide : Theme.ink
    }
    Words {
        id: figure
        anchors.centerIn: parent
        visible: spot.ofEdge
        text: spot.number
        mute: true
        bold: true
        size: Theme.note
        color: spot.chosen || spot.known ? Theme.slabInk : Theme.ink
    }
}
