// PencilRing: a mark, or a count of marks, as a grease pencil draws it. number ("4") stands at its
// upper right; together over 1 (counted): the count stands inside instead. key seeds the wobble.
// ended: gone, the ring is struck through and gray. chosen: a second, wider ring in ink. pressed: only the finger's shadow, not yet a mark. Centered on (0, 0);
// the drawing is 28 wide, the catch is the map's business.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Item {
    id: ring

    property string number: ""
    property int together: 1
    property bool counted: together > 1
    property string key: number
    property bool chosen: false
    property bool ended: false
    property bool pressed: false
    property real size: counted ? 38 : 34
    property real drawn: 1
    // Letters need a little more light on a tint than the pencil's stroke.
    readonly property color letters: ended ? Theme.pencil : Theme.dark ? Qt.lighter(Theme.oxide, 1.1) : Theme.oxide

    function draw() {
        if (Theme.move > 0)
            hand.restart();
    }

    opacity: pressed ? 0.45 : 1

    NumberAnimation {
        id: hand
        target: ring
        property: "drawn"
        from: 0.35
        to: 1
        duration: Theme.move
        easing.type: Easing.OutQuad
    }
    Rectangle {
        visible: ring.chosen
        x: -width / 2
        y: -height / 2
        width: ring.size + 12
        height: width
        radius: width / 2
        color: "transparent"
        border.width: Theme.lineSelected
        border.color: Theme.ink
    }
    PencilItem {
        x: -width / 2
        y: -height / 2
        width: ring.size
        height: ring.size
        key: ring.key
        color: ring.ended ? Theme.pencil : Theme.oxide
        struck: ring.ended
        casing: Theme.sheet
        drawn: ring.drawn
        filled: ring.counted
    }
    Words {
        visible: ring.counted
        x: -width / 2
        y: -height / 2
        text: ring.together
        mute: true
        bold: true
        size: Theme.lead
        color: ring.letters
    }
    Words {
        visible: !ring.counted && ring.number !== ""
        x: ring.size / 2 + (ring.chosen ? 5 : -2)
        y: -ring.size / 2 - height / 2 + 3
        text: ring.number
        mute: true
        bold: true
        size: Theme.lead
        color: ring.letters
        style: Text.Outline
        styleColor: Theme.sheet
    }
}
