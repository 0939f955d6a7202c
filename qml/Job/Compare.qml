// Compare: two pictures of the same thing, the earlier against the later: under a slider, or side by
// side where there is room. compare: the view model; wide: begins side by side. Signal: lookAsked.
// Keys: left and right move the slider, S changes between the two ways.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property CompareViewModel compare
    property bool wide: false
    property bool slides: !wide
    property real undoRoom: 0  // kept free above the acts
    readonly property real actsTop: acts.y
    readonly property real actsX: acts.x
    readonly property real actsWidth: acts.width

    implicitHeight: title.height + 240 + acts.height + 3 * Theme.gap + undoRoom

    signal lookAsked

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Before and after, %1").arg(compare.title)

    Keys.onPressed: event => {
        if (event.modifiers & (Qt.ControlModifier | Qt.AltModifier | Qt.MetaModifier))
            return;
        if (event.key === Qt.Key_S)
            page.slides = !page.slides;
        else if (page.slides && event.key === Qt.Key_Left)
            slider.move(-0.05);
        else if (page.slides && event.key === Qt.Key_Right)
            slider.move(0.05);
        else
            return;
        event.accepted = true;
    }

    Words {
        id: title
        objectName: "compareTitle"
        x: Theme.gutter
        width: parent.width - 2 * Theme.gutter
        text: page.compare.title
        bold: true
        size: Theme.title
        Accessible.role: Accessible.Heading
    }
    Item {
        id: area
        x: Theme.gutter
        y: title.height + Theme.gap
        width: parent.width - 2 * Theme.gutter
        height: acts.y - page.undoRoom - Theme.gap - y

        CompareSlider {
            id: slider
            objectName: "compareSlider"
            visible: page.slides && page.compare.ready
            anchors.fill: parent
            compare: page.compare
        }
        Row {
            id: pair
            visible: !page.slides && page.compare.ready
            anchors.fill: parent
            spacing: Theme.gutter

            Repeater {
                model: 2

                Column {
                    id: half

                    required property int index

                    width: (pair.width - pair.spacing) / 2
                    height: pair.height
                    spacing: Theme.gap

                    PictureFrame {
                        width: parent.width
                        height: Math.max(0, parent.height - words.height - Theme.gap)
                        whole: true
                        checked: true
                        store: page.compare.store
                        file: half.index === 0 ? page.compare.beforeFile : page.compare.afterFile
                    }
                    Words {
                        id: words
                        width: parent.width
                        text: half.index === 0 ? qsTr("Before: %1").arg(page.compare.beforeWords)
                                               : qsTr("After: %1").arg(page.compare.afterWords)
                    }
                }
            }
        }
        Words {
            visible: !page.compare.ready
            width: parent.width
            text: qsTr("There is no other picture of the same thing yet.")
        }
    }
    Column {
        id: acts
        x: Theme.gutter
        width: parent.width - 2 * Theme.gutter
        y: parent.height - height - Theme.gap
        spacing: Theme.gap

        ListView {
            id: others
            objectName: "compareOthers"
            visible: page.compare.otherCount > 1
            width: parent.width
            height: visible ? 72 : 0
            orientation: ListView.Horizontal
            spacing: Theme.gap
            clip: true
            boundsBehavior: Flickable.StopAtBounds
            model: page.compare.others
            delegate: Pressable {
                id: other

                required property string picture
                required property string file
                required property string spoken
                required property bool chosen

                width: 90
                height: 72
                name: qsTr("Hold against %1").arg(spoken)
                onClicked: page.compare.against(picture)

                PictureFrame {
                    anchors.fill: parent
                    store: page.compare.store
                    file: other.file
                }
                Rectangle {
                    anchors.fill: parent
                    color: "transparent"
                    border.width: other.chosen ? Theme.lineSelected : Theme.line
                    border.color: other.chosen ? Theme.ink : Theme.edge
                }
                Rectangle {
                    visible: other.chosen
                    anchors { left: parent.left; right: parent.right; bottom: parent.bottom }
                    height: Theme.foot
                    color: Theme.ink
                }
            }
            Accessible.role: Accessible.List
            Accessible.name: qsTr("Other pictures of the same thing")
        }
        ActRow {
            visible: page.compare.ready
            width: parent.width

            PlainButton {
                objectName: "compareWay"
                text: page.slides ? qsTr("Side by side") : qsTr("Under a slider")
                onClicked: page.slides = !page.slides
            }
            PlainButton {
                objectName: "compareBack"
                text: qsTr("Back to the picture")
                onClicked: page.lookAsked()
            }
        }
    }
}
