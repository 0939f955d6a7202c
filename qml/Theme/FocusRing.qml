// FocusRing: the 3 dp ink outline, 2 dp outside its parent, shown while the parent has the focus.
// radius: corner of the thing it surrounds.
import QtQuick
import Jambline.Theme

Rectangle {
    id: ring

    property real corner: Theme.corner
    property bool shown: parent !== null && parent.activeFocus

    anchors.fill: parent
    anchors.margins: -5
    z: 100
    visible: shown
    color: "transparent"
    radius: corner + 5
    border.width: 3
    border.color: Theme.ink
    Accessible.ignored: true
}
