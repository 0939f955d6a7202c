// GunTurns: what comes before the gun and what was sprayed, each in its turn.
// work: what is shown. shown: it is one of these; item: its screen.
// Signals: whoAsked, productsAsked, started(booth), labelAsked(key).
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
    property string sheet: ""  // that is open when what was sprayed comes
    readonly property Turn front: beforeGunTurn.shown ? beforeGunTurn : sprayedTurn
    readonly property bool shown: front.shown
    readonly property var item: front.item

    signal whoAsked
    signal productsAsked
    signal started(string booth)
    signal labelAsked(string key)

    function showGun(booth: string, from: int) {
        models.beforeGun.open(booth);
        way.gunFrom = from;
        way.go(Navigation.BeforeGun);
    }

    function showGunOf(jobId: string) {
        models.session.openCar(jobId);
        showGun("", Navigation.Car);
    }

    function showSprayed(opened: string, from: int) {
        sheet = opened;
        way.sprayedFrom = from;
        way.go(Navigation.Sprayed);
    }

    visible: shown
    focus: shown

    Turn {
        id: beforeGunTurn
        shown: turns.work === Navigation.BeforeGun
        anchors.fill: parent

        sourceComponent: BeforeGun {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "beforeGunScreen"
            wide: turns.wide
            check: turns.models.beforeGun
            climate: turns.models.sprayed.climate
            onWhoAsked: turns.whoAsked()
            onMixAsked: turns.showSprayed("mix", Navigation.BeforeGun)
            onStarted: booth => turns.started(booth)
        }
    }
    Turn {
        id: sprayedTurn
        shown: turns.work === Navigation.Sprayed
        anchors.fill: parent

        sourceComponent: Sprayed {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "sprayedScreen"
            wide: turns.wide
            sprayed: turns.models.sprayed
            open: turns.sheet
            onWhoAsked: turns.whoAsked()
            onProductsAsked: turns.productsAsked()
            onGunAsked: turns.showGun("", Navigation.Sprayed)
            onLabelAsked: key => turns.labelAsked(key)
        }
    }
}
