// CorrectTurns: the correction of a car and what it waits for, each in its turn: the plan, the walk, the
// film, the cure clock; and what AssemblyTurns has.
// work: what is shown. shown: it is one of these; item: its screen.
// Signals: whoAsked, beforeCutAsked, filmAsked(panel), sprayedAsked, productsAsked, photoAsked(stage, from),
// shotAsked(stage, key).
// Qt 6.4 makes no Loader's component in a file with bound components, so ids are reached unbound here.
// qmllint disable unqualified
import QtQuick
import Jambline.Job

FocusScope {
    id: turns

    required property ViewModels models
    required property Navigation way
    property int work: Navigation.None
    property bool wide: false
    property real undoRoom: 0
    readonly property Turn front: planTurn.shown ? planTurn : walkTurn.shown ? walkTurn
        : filmTurn.shown ? filmTurn : cureTurn
    readonly property alias assembly: assemblyTurns
    readonly property bool shown: front.shown || assemblyTurns.shown
    readonly property var item: assemblyTurns.shown ? assemblyTurns.item : front.item

    signal whoAsked
    signal beforeCutAsked
    signal filmAsked(string panel)
    signal sprayedAsked
    signal productsAsked
    signal photoAsked(string stage, int from)
    signal shotAsked(string stage, string key)

    visible: shown || assemblyTurns.over
    focus: visible

    Turn {
        id: planTurn
        shown: turns.work === Navigation.Plan
        anchors.fill: parent

        sourceComponent: Plan {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "planScreen"
            wide: turns.wide
            plan: turns.models.plan
            inspect: turns.models.inspect
            onWalkAsked: turns.way.go(Navigation.Walk)
            onBeforeCutAsked: turns.beforeCutAsked()
            onLookAsked: turns.way.go(Navigation.Inspect)
            onFilmAsked: panel => turns.filmAsked(panel)
            onCureAsked: turns.way.go(Navigation.Cure)
            onWhoAsked: turns.whoAsked()
        }
    }
    Turn {
        id: walkTurn
        shown: turns.work === Navigation.Walk
        anchors.fill: parent

        sourceComponent: Walk {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "walkScreen"
            wide: turns.wide
            walk: turns.models.walk
            inspect: turns.models.inspect
            onFinished: turns.way.go(Navigation.Car)
            onPlanAsked: turns.way.go(Navigation.Plan)
            onWhoAsked: turns.whoAsked()
        }
    }
    Turn {
        id: cureTurn
        shown: turns.work === Navigation.Cure
        anchors.fill: parent

        sourceComponent: Cure {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "cureScreen"
            wide: turns.wide
            cure: turns.models.cure
            bond: turns.models.bond
            onSprayedAsked: turns.sprayedAsked()
            onProductsAsked: turns.productsAsked()
            onWhoAsked: turns.whoAsked()
        }
    }
    Turn {
        id: filmTurn
        shown: turns.work === Navigation.Film
        anchors.fill: parent

        sourceComponent: Film {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "filmScreen"
            wide: turns.wide
            film: turns.models.film
            inspect: turns.models.inspect
        }
    }
    AssemblyTurns {
        id: assemblyTurns
        anchors.fill: parent
        models: turns.models
        way: turns.way
        work: turns.work
        wide: turns.wide
        undoRoom: turns.undoRoom
        onWhoAsked: turns.whoAsked()
        onPhotoAsked: (stage, from) => turns.photoAsked(stage, from)
        onShotAsked: (stage, key) => turns.shotAsked(stage, key)
    }
}
