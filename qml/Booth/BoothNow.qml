// BoothNow: what stands in one booth: sprayed in, or clearing. It follows the booth, so that gun down
// here or on another device turns the page by itself. clearance, reading, facts: the view models;
// wide: numbers left, acts in a pane right. Signals: whoAsked; finished, nothing stands in it any more.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Screens
import Jambline.Job

FocusScope {
    id: page

    required property ClearanceViewModel clearance
    required property BoothReadingViewModel reading
    required property BoothFactsViewModel facts
    property bool wide: false
    property real undoRoom: 0  // kept free above the main act
    readonly property bool sprays: clearance.state === ClearanceViewModel.Spraying
    readonly property real actsTop: sprays ? spraying.actsTop : clearing.actsTop
    readonly property real actsX: sprays ? spraying.actsX : clearing.actsX
    readonly property real actsWidth: sprays ? spraying.actsWidth : clearing.actsWidth

    implicitHeight: (sprays ? spraying.implicitHeight : clearing.implicitHeight) + undoRoom

    signal whoAsked
    signal finished

    Accessible.role: Accessible.Pane
    Accessible.name: clearance.title

    Connections {
        target: page.clearance
        function onSumOpened() {
            sum.opened = true;
        }
        function onLogged() {
            page.finished();
        }
    }
    Spraying {
        id: spraying
        anchors.fill: parent
        visible: page.sprays
        wide: page.wide
        undoRoom: page.undoRoom
        clearance: page.clearance
        onWhoAsked: page.whoAsked()
    }
    Clearance {
        id: clearing
        anchors.fill: parent
        visible: !page.sprays
        wide: page.wide
        undoRoom: page.undoRoom
        clearance: page.clearance
        onWhoAsked: page.whoAsked()
        onSmokeTestAsked: {
            page.reading.open(page.clearance.booth, 3);
            readings.show();
        }
        onFactsAsked: {
            page.facts.open(page.clearance.booth);
            known.show();
        }
        onFinished: page.finished()
    }
    SumSheet {
        id: sum
        anchors.fill: parent
        sum: page.clearance.sum
    }
    ReadingSheet {
        id: readings
        anchors.fill: parent
        reading: page.reading
        onWhoAsked: page.whoAsked()
    }
    FactsSheet {
        id: known
        anchors.fill: parent
        facts: page.facts
        onWhoAsked: page.whoAsked()
    }
}
