// CompareSlider: the earlier picture left of a line, the later one right of it; a finger, or move(by),
// moves the line. compare: the view model; split: where the line is, 0 to 1.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Item {
    id: slider

    required property CompareViewModel compare
    property real split: 0.5
    readonly property int percent: Math.round(100 * split)

    function move(by: real) {
        split = Math.max(0, Math.min(1, split + by));
    }

    activeFocusOnTab: true
    Keys.onLeftPressed: move(-0.05)
    Keys.onRightPressed: move(0.05)
    Accessible.focusable: true
    Accessible.role: Accessible.Slider
    Accessible.name: qsTr("Before left, after right, the line at %1 percent").arg(percent)
    Accessible.onIncreaseAction: move(0.05)
    Accessible.onDecreaseAction: move(-0.05)

    PictureFrame {
        id: after
        width: parent.width
        height: parent.height - words.height - Theme.gap
        whole: true
        checked: true
        store: slider.compare.store
        file: slider.compare.afterFile
    }
    Item {
        width: after.width * slider.split
        height: after.height
        clip: true

        PictureFrame {
            width: after.width
            height: after.height
            whole: true
            checked: true
            store: slider.compare.store
            file: slider.compare.beforeFile
        }
    }
    Rectangle {
        id: line
        x: after.width * slider.split - width / 2
        width: 3
        height: after.height
        color: Theme.slab
        border.width: 0.5
        border.color: Theme.slabInk
    }
    Rectangle {
        x: Math.max(0, Math.min(after.width - width, line.x + line.width / 2 - width / 2))
        y: (after.height - height) / 2
        width: 48
        height: 48
        radius: 24
        color: Theme.slab

        Icon {
            anchors.centerIn: parent
            source: "swap"
            color: Theme.slabInk
        }
    }
    MouseArea {
        objectName: "compareTouch"
        anchors.fill: after
        preventStealing: true
        onPressed: mouse => slider.split = Math.max(0, Math.min(1, mouse.x / width))
        onPositionChanged: mouse => slider.split = Math.max(0, Math.min(1, mouse.x / width))
    }
    FocusRing {
        shown: slider.activeFocus
    }
    Row {
        id: words
        anchors.bottom: parent.bottom
        width: parent.width
        spacing: Theme.gap

        Words {
            width: (parent.width - Theme.gap) / 2
            text: qsTr("Before: %1").arg(slider.compare.beforeWords)
            size: Theme.note
        }
        Words {
            width: (parent.width - Theme.gap) / 2
            horizontalAlignment: Text.AlignRight
            text: qsTr("After: %1").arg(slider.compare.afterWords)
            size: Theme.note
        }
    }
}
