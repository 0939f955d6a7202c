// Floor: the cars in the shop in two groups, and the act that opens one more; a table at a desk.
// Without a car the first start stands here. aside: a car beside it has the main act. undoRoom:
// kept free above the acts, whose top is actsTop. Signals: carAsked(jobId), openAsked. toTop()
// scrolls to the first car.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: screen

    required property FloorViewModel floor
    required property DemoViewModel demo
    property LeftoversViewModel leftovers: null  // pictures that were taken and not kept
    property bool desk: false
    property bool aside: false
    property real undoRoom: 0
    readonly property real actsTop: act.y

    signal carAsked(string jobId)
    signal openAsked

    function toTop() {
        list.positionViewAtBeginning();
        table.toTop();
    }

    PaperCard {
        id: leftRow
        objectName: "leftRow"
        visible: (screen.leftovers?.count ?? 0) > 0
        pressable: visible
        x: Theme.gutter
        width: parent.width - 2 * Theme.gutter
        height: visible ? implicitHeight : 0
        name: qsTr("%1. Opens them.").arg(screen.leftovers?.words ?? "")
        onClicked: leftSheet.opened = true

        Item {
            width: parent.width
            height: Math.max(leftShape.height, leftWords.height)

            StateShape {
                id: leftShape
                anchors.verticalCenter: parent.verticalCenter
                kind: ShapeKind.Waits
                size: 24
            }
            Words {
                id: leftWords
                x: leftShape.width + 12
                width: parent.width - x - 32
                anchors.verticalCenter: parent.verticalCenter
                text: screen.leftovers?.words ?? ""
                mute: true
                bold: true
            }
            Icon {
                anchors.right: parent.right
                anchors.verticalCenter: parent.verticalCenter
                source: "forward"
            }
        }
    }
    GroupTitles {
        id: groups
    }
    FloorTable {
        id: table
        visible: screen.desk && screen.floor.cars > 0
        focus: visible
        floor: screen.floor
        x: Theme.gutter
        width: parent.width - 2 * Theme.gutter
        y: list.y
        height: list.height
        onCarAsked: jobId => screen.carAsked(jobId)
    }
    FirstRun {
        visible: screen.floor.cars === 0
        demo: screen.demo
        y: list.y
        width: parent.width
        height: list.height
    }
    ListView {
        id: list
        objectName: "floorList"
        visible: !screen.desk && screen.floor.cars > 0
        focus: visible
        y: leftRow.visible ? leftRow.height + 8 : 0
        width: parent.width
        height: act.y - 8 - screen.undoRoom - y
        clip: true
        spacing: 8
        boundsBehavior: Flickable.StopAtBounds
        cacheBuffer: 400
        keyNavigationEnabled: true
        currentIndex: -1
        model: screen.floor.rows
        section.property: "group"
        section.delegate: groups.title
        delegate: FloorCard {
            x: Theme.gutter
            width: list.width - 2 * Theme.gutter
            onClicked: screen.carAsked(jobId)
        }
        Accessible.role: Accessible.List
        Accessible.name: screen.floor.countWords
    }
    Item {
        id: act
        x: parent.width - width - Theme.gutter
        width: Math.min(parent.width - 2 * Theme.gutter, screen.desk ? 360 * Theme.textScale : parent.width)
        height: screen.aside ? other.implicitHeight : main.implicitHeight
        y: parent.height - height - 8

        SlabButton {
            id: main
            objectName: "openACar"
            anchors.fill: parent
            visible: !screen.aside
            pressable: visible
            text: qsTr("Open a car")
            onClicked: screen.openAsked()
        }
        PlainButton {
            id: other
            objectName: "openAnotherCar"
            anchors.fill: parent
            visible: screen.aside
            pressable: visible
            text: qsTr("Open a car")
            onClicked: screen.openAsked()
        }
    }
    LeftoversSheet {
        id: leftSheet
        anchors.fill: parent
        leftovers: screen.leftovers
    }
}
