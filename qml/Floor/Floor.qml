// Floor: the cars in the shop in two groups, and the act that opens one more. Without a car the
// first start stands here. Signals: carAsked(jobId), openAsked. toTop() scrolls to the first car.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: screen

    required property FloorViewModel floor
    property bool wide: false

    signal carAsked(string jobId)
    signal openAsked

    function toTop() {
        list.positionViewAtBeginning();
    }

    GroupTitles {
        id: groups
    }
    FirstRun {
        visible: screen.floor.cars === 0
        width: parent.width
        height: act.y - 8
    }
    ListView {
        id: list
        objectName: "floorList"
        visible: screen.floor.cars > 0
        focus: true
        activeFocusOnTab: true
        width: parent.width
        height: act.y - 8
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
    SlabButton {
        id: act
        objectName: "openACar"
        x: Theme.gutter
        width: parent.width - 2 * Theme.gutter
        height: implicitHeight
        y: parent.height - height - 8
        text: qsTr("Open a car")
        onClicked: screen.openAsked()
    }
}
