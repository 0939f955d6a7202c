// ExhaustActs: what is said of a booth's exhaust while it clears: what starts the time again, or that
// it counts; without a time, where one comes from. clearance: the view model. used: this one is shown.
// Signals: whoAsked; smokeTestAsked, factsAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

ActRow {
    id: acts

    required property ClearanceViewModel clearance
    property bool used: true
    readonly property bool counts: used && clearance.state === ClearanceViewModel.Counting
    readonly property bool stands: used && clearance.state === ClearanceViewModel.NotCounting
    readonly property bool untimed: used && clearance.state === ClearanceViewModel.NoTime

    signal whoAsked
    signal smokeTestAsked
    signal factsAsked

    function act(what: var) {
        if (clearance.mayAct)
            what();
        else
            whoAsked();
    }

    visible: counts || stands || untimed
    height: implicitHeight

    PlainButton {
        objectName: acts.counts ? "fanStopped" : ""
        visible: acts.counts
        pressable: visible
        text: qsTr("Fan stopped")
        secondLine: qsTr("starts again")
        onClicked: acts.act(() => acts.clearance.fanStopped())
    }
    PlainButton {
        objectName: acts.counts ? "switchedToBake" : ""
        visible: acts.counts
        pressable: visible
        text: qsTr("Bake is on")
        secondLine: qsTr("starts again")
        name: qsTr("Switched to bake, starts again")
        onClicked: acts.act(() => acts.clearance.switchedToBake())
    }
    PlainButton {
        objectName: acts.counts ? "doorOpened" : ""
        visible: acts.counts
        pressable: visible
        text: qsTr("Door open")
        secondLine: qsTr("starts again")
        name: qsTr("Door opened, starts again")
        onClicked: acts.act(() => acts.clearance.doorOpened())
    }
    PlainButton {
        objectName: acts.stands ? "freshAir" : ""
        visible: acts.stands
        pressable: visible
        beside: true
        iconName: "fan"
        text: qsTr("Exhaust on fresh air, doors shut")
        secondLine: qsTr("counts the whole time again")
        onClicked: acts.act(() => acts.clearance.freshAir())
    }
    PlainButton {
        objectName: acts.untimed ? "clearanceSmoke" : ""
        visible: acts.untimed
        pressable: visible
        text: qsTr("Log a smoke test")
        onClicked: acts.smokeTestAsked()
    }
    PlainButton {
        objectName: acts.untimed ? "clearanceFacts" : ""
        visible: acts.untimed
        pressable: visible
        text: qsTr("What is known of it")
        onClicked: acts.factsAsked()
    }
}
