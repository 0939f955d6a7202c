// Floor: the cars in the shop in two groups, and the act that opens one more; a table at a desk.
// Without a car the first start stands here. aside: a car beside it has the main act. undoRoom:
// kept free above the acts, whose top is actsTop. Signals: carAsked(jobId), openAsked, gunAsked(jobId):
// what is next is spraying; partAsked(key): a part is offered; whereAsked: where is a part? devicesAsked:
// a manager has to look at them; joinAsked. toTop() scrolls to the first car.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: screen

    required property FloorViewModel floor
    required property DemoViewModel demo
    property LeftoversViewModel leftovers: null  // pictures that were taken and not kept
    property HandOffViewModel hand: null  // parts that are offered to whoever taps
    property DevicesViewModel devices: null
    property JoinViewModel join: null
    property bool desk: false
    property bool aside: false
    property real undoRoom: 0
    readonly property real actsTop: act.y
    readonly property bool waits: (screen.join?.joining ?? false) && !(screen.join?.bringsShop ?? false) && screen.floor.cars === 0
    // Offered parts with large words leave the list a height that it can be read in.
    implicitHeight: offers.visible ? list.y + 176 + undoRoom + act.height + 16 : 0

    signal carAsked(string jobId)
    signal openAsked
    signal gunAsked(string jobId)
    signal partAsked(string key)
    signal whereAsked
    signal devicesAsked
    signal joinAsked

    function toTop() {
        list.positionViewAtBeginning();
        table.toTop();
    }

    FloorRow {
        id: leftRow
        objectName: "leftRow"
        visible: (screen.leftovers?.count ?? 0) > 0
        x: Theme.gutter
        width: parent.width - 2 * Theme.gutter
        height: visible ? implicitHeight : 0
        words: screen.leftovers?.words ?? ""
        onClicked: leftSheet.opened = true
    }
    FloorRow {
        id: devicesRow
        objectName: "devicesRow"
        // Where words are large on a phone the cars need their room: Record leads to the devices.
        readonly property bool tight: screen.width < 840 && Theme.textScale > 1.2

        visible: words !== "" && !tight
        x: Theme.gutter
        y: leftRow.visible ? leftRow.height + 8 : 0
        width: parent.width - 2 * Theme.gutter
        height: visible ? implicitHeight : 0
        words: screen.devices?.floorWords ?? ""
        shape: screen.devices?.floorShape ?? ShapeKind.None
        onClicked: screen.devicesAsked()
    }
    OfferRows {
        id: offers
        visible: screen.floor.cars > 0 && (screen.hand?.offerCount ?? 0) > 0
        x: Theme.gutter
        y: devicesRow.visible ? devicesRow.y + devicesRow.height + 8 : devicesRow.y
        width: parent.width - 2 * Theme.gutter
        hand: screen.hand
        most: screen.width < 840 && Theme.textScale > 1.2 ? 1 : 2
        onPartAsked: key => screen.partAsked(key)
    }
    Connections {
        property bool listAtTop: true
        property bool tableAtTop: true

        target: screen.floor
        function onAboutToChange() {
            listAtTop = list.atYBeginning;
            tableAtTop = table.atTop;
        }
        function onChanged() {
            if (listAtTop)
                list.positionViewAtBeginning();
            if (tableAtTop)
                table.toTop();
        }
        function onNextStarted(jobId) { screen.carAsked(jobId); }
        function onGunAsked(jobId) { screen.gunAsked(jobId); }
    }
    NextRow {
        id: nextRow
        visible: table.visible && screen.floor.nextText !== ""
        x: Theme.gutter
        y: list.y
        width: parent.width - 2 * Theme.gutter
        height: visible ? implicitHeight : 0
        floor: screen.floor
        onBegun: screen.floor.startNext()
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
        y: list.y + (nextRow.visible ? nextRow.height + 8 : 0)
        height: list.y + list.height - y
        onCarAsked: jobId => screen.carAsked(jobId)
    }
    FirstRun {
        visible: screen.floor.cars === 0
        demo: screen.demo
        join: screen.join
        onJoinAsked: screen.joinAsked()
        y: list.y
        width: parent.width
        height: list.height
    }
    ListView {
        id: list
        objectName: "floorList"
        visible: !screen.desk && screen.floor.cars > 0
        focus: visible
        y: offers.visible ? offers.y + offers.height + 8 : offers.y
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
            onNextAsked: screen.floor.startNext()
        }
        Accessible.role: Accessible.List
        Accessible.name: screen.floor.countWords
    }
    Item {
        id: act
        x: parent.width - width - Theme.gutter
        width: Math.min(parent.width - 2 * Theme.gutter, screen.desk ? 360 * Theme.textScale : parent.width)
        height: Math.max(screen.aside ? other.implicitHeight : main.implicitHeight, where.visible ? where.implicitHeight : 0)
        y: parent.height - height - 8

        PlainButton {
            id: where
            objectName: "whereIsIt"
            x: 0
            width: visible ? Math.min(parent.width / 2, Math.max(Theme.touch, implicitWidth)) : 0
            height: parent.height
            visible: (screen.hand?.partCount ?? 0) > 0
            pressable: visible
            iconName: "search"
            text: qsTr("Where is it?")
            name: qsTr("Where is a part of any car?")
            onClicked: screen.whereAsked()
        }
        SlabButton {
            id: main
            objectName: "openACar"
            x: other.x
            width: other.width
            height: parent.height
            visible: !screen.aside
            pressable: visible
            waits: screen.waits
            text: qsTr("Open a car")
            secondLine: screen.waits ? qsTr("when this device is let in") : ""
            onRefused: screen.joinAsked()
            onClicked: screen.openAsked()
        }
        PlainButton {
            id: other
            objectName: "openAnotherCar"
            x: where.visible ? where.width + Theme.gap : 0
            width: parent.width - x
            height: parent.height
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
