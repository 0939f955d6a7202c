// Booth: each booth, prep deck and mixing room on its tape: what stands in it now, its filter, smoke
// test and air, and what was done to it and how long ago. The main act is what is due of all booths,
// else what comes before the gun for the car on the tape. booth, facts, reading: the view models;
// wide: two booths beside each other. Without a booth: the form of one, and the act that adds it.
// gunWords: what the act before the gun says of the car on the tape; "" there is nothing to spray.
// Signals: whoAsked, somebody has to say who he is first; nowAsked(booth), what stands in it;
// gunAsked; protectionAsked, limitsAsked, exposureAsked: what protects people (protection: its model).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens
import Jambline.Job

FocusScope {
    id: page

    required property BoothViewModel booth
    required property BoothFactsViewModel facts
    required property BoothReadingViewModel reading
    property bool wide: false
    property RegisterViewModel protection: null
    property string gunWords: ""
    property real undoRoom: 0  // kept free above the main act
    readonly property real actsTop: main.y
    readonly property real actsX: main.x
    readonly property real actsWidth: main.width
    implicitHeight: main.height + undoRoom + 320

    signal whoAsked
    signal nowAsked(string booth)
    signal gunAsked
    signal protectionAsked
    signal limitsAsked
    signal exposureAsked

    function toTop() {
        view.contentY = 0;
    }
    function openBooth(key: string) {
        booth.openBooth(key);
        one.show(key);
    }
    function read(key: string, what: int) {
        reading.open(key, what);
        readings.show();
    }
    function ask(key: string, event: int) {
        booth.startEvent(key, event);
        log.opened = true;
    }
    // What is due.
    function act() {
        switch (booth.due) {
        case BoothViewModel.LogOver:
            return nowAsked(booth.dueBooth);
        case BoothViewModel.ChangeFilters:
            return ask(booth.dueBooth, 0);
        case BoothViewModel.ReadPressure:
            return read(booth.dueBooth, 1);
        case BoothViewModel.SmokeTest:
            return read(booth.dueBooth, 3);
        case BoothViewModel.ReadVelocity:
            return read(booth.dueBooth, 0);
        default:
            return gunWords !== "" ? gunAsked() : openBooth("");
        }
    }

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Booth")

    Connections {
        target: page.booth
        function onSumOpened() {
            sum.opened = true;
        }
    }
    Flickable {
        id: view
        width: parent.width
        height: main.y - Theme.gap - page.undoRoom
        contentHeight: body.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: body
            x: Theme.gutter
            width: view.width - 2 * Theme.gutter
            topPadding: Theme.gap
            bottomPadding: Theme.gap
            spacing: Theme.gutter

            Column {
                width: parent.width
                visible: booths.count === 0
                spacing: Theme.gap

                BoothCard {
                    width: Math.min(parent.width, 560)
                    empty: true
                    title: qsTr("No booth yet")
                    kindWords: ""
                    ages: []
                    filtersStillIn: false
                    booth: page.booth
                }
                Words {
                    width: Math.min(parent.width, 560)
                    text: qsTr("Nobody has named a booth. With one, its time to clear counts down, filters and smoke tests come due, and dirt over time shows the cars before and after.")
                    color: Theme.pencil
                }
            }
            Grid {
                id: grid
                width: parent.width
                columns: page.wide ? 2 : 1
                columnSpacing: Theme.gutter
                rowSpacing: Theme.gutter

                Repeater {
                    id: booths
                    model: page.booth.booths

                    BoothCard {
                        required property string key
                        required stateShape
                        required stateWords
                        required stateLine
                        required countdown
                        required live
                        required sprayed
                        required filter
                        required filterNote
                        required filterMissing
                        required filterOut
                        required filterSum
                        required smoke
                        required smokeNote
                        required smokeMissing
                        required smokeOut
                        required smokeSum
                        required air
                        required airNote
                        required airMissing
                        required airOut
                        required airSum

                        width: (grid.width - (grid.columns - 1) * grid.columnSpacing) / grid.columns
                        booth: page.booth
                        onOpened: page.openBooth(key)
                        onNowAsked: page.nowAsked(key)
                        onReadAsked: what => page.read(key, what)
                        onSumAsked: figure => page.booth.openSum(key, figure)
                        onAsked: event => page.ask(key, event)
                        onFiltersOut: page.booth.mayKeep ? page.booth.filtersOut(key) : page.whoAsked()
                    }
                }
            }
            AirLinks {
                width: Math.min(parent.width, page.wide ? 640 : parent.width)
                visible: page.protection !== null
                protection: page.protection
                onProtectionAsked: page.protectionAsked()
                onLimitsAsked: page.limitsAsked()
                onExposureAsked: page.exposureAsked()
            }
            PlainButton {
                objectName: booths.count === 0 ? "" : "addBooth"
                width: Math.min(parent.width, page.wide ? 420 : parent.width)
                height: implicitHeight
                visible: booths.count > 0 && !page.booth.readOnly
                pressable: visible
                text: qsTr("Add another booth")
                secondLine: page.booth.mayKeep ? "" : qsTr("say who you are first")
                dashed: !page.booth.mayKeep
                onRefused: page.whoAsked()
                onClicked: page.openBooth("")
            }
        }
    }
    SlabButton {
        id: main

        readonly property bool idle: page.booth.due === BoothViewModel.None && page.gunWords === ""
        readonly property bool adds: booths.count === 0

        objectName: adds ? "addBooth" : "boothMain"
        x: (parent.width - width) / 2
        y: parent.height - height - Theme.gap
        width: Math.min(parent.width - 2 * Theme.gutter, page.wide ? 420 : parent.width)
        height: implicitHeight
        visible: !page.booth.readOnly
        pressable: visible
        text: adds ? qsTr("Add a booth") : page.booth.due !== BoothViewModel.None ? page.booth.dueText
            : page.gunWords !== "" ? qsTr("Before the gun") : qsTr("Log a reading")
        secondLine: waits ? qsTr("say who you are first") : adds ? qsTr("its name, and how the air moves")
            : page.booth.due !== BoothViewModel.None ? page.booth.dueSecond
            : page.gunWords !== "" ? page.gunWords : qsTr("nothing is due")
        waits: !page.booth.mayKeep
        onRefused: page.whoAsked()
        onClicked: adds ? page.openBooth("") : idle ? page.read(page.booth.firstBooth, 1) : page.act()
    }
    BoothSheet {
        id: one
        anchors.fill: parent
        enabled: !known.opened && !log.opened
        booth: page.booth
        onFactsAsked: key => {
            page.facts.open(key);
            known.show();
        }
        onEventAsked: event => {
            page.booth.startCorrecting(event);
            log.opened = true;
        }
        onWhoAsked: page.whoAsked()
    }
    FactsSheet {
        id: known
        z: 52
        anchors.fill: parent
        facts: page.facts
        onWhoAsked: page.whoAsked()
    }
    EventSheet {
        id: log
        z: 52
        anchors.fill: parent
        booth: page.booth
        onWhoAsked: page.whoAsked()
    }
    ReadingSheet {
        id: readings
        z: 52
        anchors.fill: parent
        reading: page.reading
        onWhoAsked: page.whoAsked()
    }
    SumSheet {
        id: sum
        z: 52
        anchors.fill: parent
        sum: page.booth.sum
    }
}
