// BoothTurns: the works of the place Booth, each in its turn: what stands in a booth now.
// work: what is shown. shown: it is one of these; item: its screen. Signal: whoAsked.
// Qt 6.4 makes no Loader's component in a file with bound components, so ids are reached unbound here.
// qmllint disable unqualified
import QtQuick
import Jambline.Booth

FocusScope {
    id: turns

    required property ViewModels models
    required property Navigation way
    property int work: Navigation.None
    property bool wide: false
    property real undoRoom: 0
    readonly property Turn front: boothNowTurn
    readonly property bool shown: front.shown
    readonly property var item: front.item

    signal whoAsked

    function showBooth(booth: string) {
        models.clearance.open(booth);
        way.go(Navigation.BoothNow);
    }

    visible: shown
    focus: shown

    Turn {
        id: boothNowTurn
        shown: turns.work === Navigation.BoothNow
        anchors.fill: parent

        sourceComponent: BoothNow {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "boothNowScreen"
            wide: turns.wide
            clearance: turns.models.clearance
            reading: turns.models.boothReading
            facts: turns.models.boothFacts
            onFinished: turns.way.toPlace(Navigation.Booth)
            onWhoAsked: turns.whoAsked()
        }
    }
}
