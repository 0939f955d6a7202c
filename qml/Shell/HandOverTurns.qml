// HandOverTurns: how a car comes and goes, each in its turn: check-in, walk-around, the note for the
// customer, a comeback.
// work: what is shown. shown: it is one of these; item: its screen.
// Signal: whoAsked.
// Qt 6.4 makes no Loader's component in a file with bound components, so ids are reached unbound here.
// qmllint disable unqualified
import QtQuick
import Jambline.Job
import Jambline.Screens

FocusScope {
    id: turns

    required property ViewModels models
    required property Navigation way
    property int work: Navigation.None
    property bool wide: false
    property real undoRoom: 0
    readonly property Turn front: checkInTurn.shown ? checkInTurn : walkAroundTurn.shown ? walkAroundTurn
        : handOverTurn.shown ? handOverTurn : comebackTurn
    readonly property bool shown: front.shown
    readonly property var item: front.item

    signal whoAsked

    function showNote(from: int) {
        way.noteFrom = from;
        models.handOver.ask();
        way.go(Navigation.HandOver);
    }

    function lead(leads: int, where: string) {
        if (leads === WalkAroundViewModel.Panel) {
            models.inspect.openPanel(where);
            way.go(Navigation.Panel);
        } else if (leads === WalkAroundViewModel.Shots) {
            models.shots.choose(where);
            way.go(Navigation.Shots);
        } else {
            if (leads === WalkAroundViewModel.Stage && models.car.stageKey !== where)
                models.car.choose(where);
            way.go(Navigation.Car);
        }
    }

    visible: shown
    focus: shown

    Connections {
        target: turns.models.car
        function onCheckInAsked() { turns.way.go(Navigation.CheckIn); }
        function onWalkAroundAsked() { turns.way.go(Navigation.WalkAround); }
        function onComebackAsked() { turns.way.go(Navigation.Comeback); }
    }
    Connections {
        target: turns.models.visitRows
        function onCheckInAsked() { turns.way.go(Navigation.CheckIn); }
        function onWalkAroundAsked() { turns.way.go(Navigation.WalkAround); }
        function onHandOverAsked() { turns.showNote(Navigation.Car); }
        function onTimeLineAsked() { turns.way.go(Navigation.TimeLine); }
    }
    Turn {
        id: checkInTurn
        shown: turns.work === Navigation.CheckIn
        anchors.fill: parent

        sourceComponent: CheckIn {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "checkInScreen"
            wide: turns.wide
            checkIn: turns.models.checkIn
            onWhoAsked: turns.whoAsked()
            onPictureAsked: {
                turns.models.shots.choose("check-in");
                turns.way.go(Navigation.Shots);
            }
        }
    }
    Turn {
        id: walkAroundTurn
        shown: turns.work === Navigation.WalkAround
        anchors.fill: parent

        sourceComponent: WalkAround {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "walkAroundScreen"
            wide: turns.wide
            walk: turns.models.walkAround
            onWhoAsked: turns.whoAsked()
            onNoteAsked: turns.showNote(Navigation.WalkAround)
            onCureAsked: turns.way.go(Navigation.Cure)
            onLeadAsked: (leads, where) => turns.lead(leads, where)
        }
    }
    Turn {
        id: handOverTurn
        shown: turns.work === Navigation.HandOver
        anchors.fill: parent

        sourceComponent: HandOver {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "handOverScreen"
            wide: turns.wide
            note: turns.models.handOver
        }
    }
    Turn {
        id: comebackTurn
        shown: turns.work === Navigation.Comeback
        anchors.fill: parent

        sourceComponent: Comeback {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "comebackScreen"
            wide: turns.wide
            comeback: turns.models.comeback
            onWhoAsked: turns.whoAsked()
        }
    }
    Connections {
        target: turns.models.comeback
        function onCameBack() {
            if (turns.work === Navigation.Comeback)
                turns.way.go(Navigation.Car);
        }
    }
    Connections {
        target: turns.models.walkAround
        function onDelivered() {
            if (turns.work === Navigation.WalkAround)
                turns.showNote(Navigation.Car);
        }
    }
}
