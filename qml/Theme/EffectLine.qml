// EffectLine: a ratio with its interval against 1 on a logarithmic line. name (one spoken sentence)
// must be set. ratio, low, high; unbounded: no upper end; tooFew: nothing can be said, dashed;
// strong: full instead of hollow. reach: the line goes from 1/reach to reach.
// lowWords, highWords below the ends, middleWords below 1 where there is room.
import QtQuick
import Jambline.Theme

Item {
    id: line

    required property string name
    property alias ratio: paper.ratio
    property alias low: paper.low
    property alias high: paper.high
    property alias unbounded: paper.unbounded
    property alias tooFew: paper.tooFew
    property alias strong: paper.strong
    property alias reach: paper.reach
    property alias tone: paper.tone
    property string lowWords: ""
    property string middleWords: ""
    property string highWords: ""

    implicitWidth: 240
    implicitHeight: paper.height + (low.visible ? Math.max(low.height, high.height) : 0)
    Accessible.role: Accessible.Graphic
    Accessible.name: name

    EffectPaper {
        id: paper
        width: parent.width
        height: 28
        tone: Theme.ink
        edge: Theme.edge
        ground: Theme.sheet
        Accessible.ignored: true
    }
    Words {
        id: low
        y: paper.height
        width: Math.min(natural, (parent.width - 12) / 2)
        visible: text !== ""
        text: line.lowWords
        mute: true
        size: Theme.note
        color: Theme.pencil
    }
    Words {
        id: middle
        x: (parent.width - width) / 2
        y: paper.height
        width: natural
        visible: text !== "" && x > low.natural + 12 && x + natural + 12 < parent.width - high.natural
        text: line.middleWords
        mute: true
        size: Theme.note
        color: Theme.pencil
    }
    Words {
        id: high
        y: paper.height
        anchors.right: parent.right
        width: Math.min(natural, (parent.width - 12) / 2)
        horizontalAlignment: Text.AlignRight
        visible: text !== ""
        text: line.highWords
        mute: true
        size: Theme.note
        color: Theme.pencil
    }
}
