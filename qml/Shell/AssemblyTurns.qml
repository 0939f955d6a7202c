// AssemblyTurns: what a car is made of besides its paint: its work, its parts and the order in which it
// goes together, each in its turn; and over any screen what is on order and where a part is.
// work: what is shown. shown: it is one of these; item: its screen. over: a sheet of it is open.
// Signals: whoAsked, photoAsked(stage, from): a picture that belongs to what is typed; shotAsked(stage, key).
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
    readonly property Turn front: operationsTurn.shown ? operationsTurn : assemblyTurn.shown ? assemblyTurn : partsTurn
    readonly property bool shown: front.shown || fitTurns.shown
    readonly property var item: fitTurns.shown ? fitTurns.item : front.item
    readonly property bool over: orders.opened || orders.shown > 0 || where.opened || where.shown > 0

    signal whoAsked
    signal photoAsked(string stage, int from)
    signal shotAsked(string stage, string key)

    // "operations", "assembly", "orders", "fit"
    function show(place: string) {
        if (place === "orders")
            orders.show();
        else if (place === "fit")
            fitTurns.showFit("", Navigation.Car);
        else
            way.go(place === "operations" ? Navigation.Operations : Navigation.Assembly);
    }

    function showWhere() {
        where.show();
    }

    // The key of a part of any car.
    function showPart(key: string) {
        models.hand.open(key);
        way.go(Navigation.Parts);
    }

    visible: shown || over
    focus: shown || over

    Turn {
        id: operationsTurn
        shown: turns.work === Navigation.Operations
        anchors.fill: parent

        sourceComponent: Operations {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "operationsScreen"
            wide: turns.wide
            operations: turns.models.operations
            store: turns.models.wall.store
            onPhotoAsked: stage => turns.photoAsked(stage === "" ? turns.models.car.stageKey : stage, Navigation.Operations)
        }
    }
    Turn {
        id: assemblyTurn
        shown: turns.work === Navigation.Assembly
        anchors.fill: parent

        sourceComponent: Assembly {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "assemblyScreen"
            wide: turns.wide
            assembly: turns.models.assembly
            rules: turns.models.rules
            session: turns.models.session
            measures: true
            onCureAsked: turns.way.go(Navigation.Cure)
            onFitAsked: fitTurns.showFit("", Navigation.Assembly)
            onWhoAsked: turns.whoAsked()
        }
    }
    Turn {
        id: partsTurn
        shown: turns.work === Navigation.Parts
        anchors.fill: parent

        sourceComponent: Parts {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "partsScreen"
            wide: turns.wide
            parts: turns.models.parts
            store: turns.models.wall.store
            onPhotoAsked: turns.photoAsked(turns.models.car.stageKey, Navigation.Parts)
            onWhereAsked: turns.showWhere()
        }
    }
    FitTurns {
        id: fitTurns
        anchors.fill: parent
        models: turns.models
        way: turns.way
        work: turns.work
        wide: turns.wide
        undoRoom: turns.undoRoom
        onWhoAsked: turns.whoAsked()
        onShotAsked: (stage, key) => turns.shotAsked(stage, key)
    }
    OrdersSheet {
        id: orders
        anchors.fill: parent
        orders: turns.models.orders
    }
    WhereSheet {
        id: where
        anchors.fill: parent
        hand: turns.models.hand
        onCarAsked: key => turns.showPart(key)
    }
}
