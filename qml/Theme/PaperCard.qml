// PaperCard: a row or card of paper; put anything inside, it grows with it. Inside, `parent.width`
// is the room. padding: around the content. pressable (off by default) with a `name`; then the
// outline is `edge`, since it can be pressed, unless `quiet`. bare: no paper of its own.
// chosen: 2.5 dp ink outline; footColor: a 6 dp foot (blue: running here); side: a 6 dp left bar.
// must, disputed: oxide outline. dashed: nothing here yet. Signals: clicked, held.
import QtQuick
import Jambline.Theme

Pressable {
    id: card

    default property alias content: holder.data
    property real padding: 12
    property real minimumHeight: pressable ? Theme.touch : 0
    property bool quiet: false
    property bool bare: false
    property bool chosen: false
    property bool must: false
    property bool disputed: false
    property bool dashed: false
    property bool foot: false
    property bool side: false
    property color footColor: Theme.ink

    pressable: false
    implicitWidth: holder.childrenRect.width + 2 * padding
    implicitHeight: Math.max(minimumHeight, holder.childrenRect.height + 2 * padding)

    Rectangle {
        anchors.fill: parent
        visible: !card.bare
        radius: Theme.corner
        color: card.pressed ? Theme.paper : Theme.sheet
        border.width: card.dashed ? 0 : card.chosen ? Theme.lineSelected
                                      : card.must || card.disputed ? 2 : card.pressable && !card.quiet ? Theme.line : 1.2
        border.color: card.chosen ? Theme.ink : card.must || card.disputed ? Theme.oxide
                                              : card.pressable && !card.quiet ? Theme.edge : Theme.chalk
    }
    DashFrame {
        anchors.fill: parent
        visible: card.dashed
        color: Theme.edge
        radius: Theme.corner
    }
    Rectangle {
        visible: card.foot
        anchors { left: parent.left; right: parent.right; bottom: parent.bottom; margins: 1 }
        height: Theme.foot
        radius: Theme.corner / 2
        color: card.footColor
    }
    Rectangle {
        visible: card.side
        anchors { left: parent.left; top: parent.top; bottom: parent.bottom; margins: 1 }
        width: Theme.foot
        radius: Theme.corner / 2
        color: card.footColor
    }
    Item {
        id: holder
        x: card.padding
        width: card.width - 2 * card.padding
        height: childrenRect.height
        anchors.verticalCenter: parent.verticalCenter
    }
}
