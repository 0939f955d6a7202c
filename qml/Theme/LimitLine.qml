// LimitLine: a value on a line with a dashed limit. name (one spoken sentence) must be set.
// value, limit: 0 to 1 along the line (limit below 0: none). lowWords, highWords below the ends.
// filled: a thick line from the left end to the value. out: the value is drawn in oxide.
// tooFew: no value can be said; the line is dashed. tone: color of the dot (ink).
// 96 x 24 and up; marks: further positions with a full tick ([0.66, 1]).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme

Item {
    id: line

    required property string name
    property real value: 0
    property real limit: -1
    property list<real> marks: []
    property string lowWords: ""
    property string highWords: ""
    property bool filled: false
    property bool out: false
    property bool tooFew: false
    property color tone: Theme.ink
    property real dot: 14

    readonly property bool folded: low.visible && high.visible && low.natural + high.natural + 8 > width
    readonly property real reach: Math.max(0, Math.min(1, value))

    implicitWidth: Math.max(96, low.natural + high.natural + 8)
    implicitHeight: 24 + (low.visible || high.visible ? low.height + 2 : 0) + (folded ? high.height : 0)
    Accessible.role: Accessible.Graphic
    Accessible.name: name

    Rectangle {
        visible: !line.tooFew
        y: 12 - height / 2
        width: parent.width
        height: 2
        color: Theme.edge
    }
    DashFrame {
        visible: line.tooFew
        y: 11
        width: parent.width
        height: 2
        thickness: 2
        dash: 3
        gap: 4
        color: Theme.edge
    }
    Repeater {
        model: line.marks.length

        Rectangle {
            required property int index
            x: line.marks[index] * (line.width - width)
            width: 1.6
            height: 24
            color: Theme.ink
        }
    }
    DashFrame {
        visible: line.limit >= 0
        x: line.limit * line.width - width / 2
        width: 1.6
        height: 24
        thickness: 1.6
        dash: 3
        gap: 3
        color: Theme.pencil
    }
    Rectangle {
        visible: line.filled && !line.tooFew
        y: 12 - height / 2
        width: line.reach * line.width
        height: 7
        color: line.out ? Theme.oxide : line.tone
    }
    Rectangle {
        visible: !line.tooFew
        x: line.reach * line.width - width / 2
        y: 12 - height / 2
        width: line.dot
        height: line.dot
        radius: line.dot / 2
        color: line.out ? Theme.oxide : line.tone
    }
    Words {
        id: low
        y: 26
        visible: text !== ""
        text: line.lowWords
        mute: true
        size: Theme.small
        color: Theme.pencil
        wrapMode: Text.NoWrap
    }
    Words {
        id: high
        y: line.folded ? 26 + low.height : 26
        anchors.right: parent.right
        visible: text !== ""
        text: line.highWords
        mute: true
        size: Theme.small
        color: Theme.pencil
        wrapMode: Text.NoWrap
    }
}
