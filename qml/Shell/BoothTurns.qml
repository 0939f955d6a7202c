// BoothTurns: the works of the place Booth, each in its turn: what stands in a booth now, the
// protection register, limits, exposure.
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
    readonly property Turn front: registerTurn.shown ? registerTurn : protectionTurn.shown ? protectionTurn
        : limitsTurn.shown ? limitsTurn : exposureTurn.shown ? exposureTurn : boothNowTurn
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
    Turn {
        id: registerTurn
        shown: turns.work === Navigation.Register || (turns.wide && turns.work === Navigation.Protection)
        anchors.fill: parent

        sourceComponent: Register {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "registerScreen"
            wide: turns.wide
            protection: turns.models.protection
            onPersonAsked: turns.way.go(Navigation.Protection)
            onWhoAsked: turns.whoAsked()
        }
    }
    Turn {
        id: protectionTurn
        shown: !turns.wide && turns.work === Navigation.Protection
        anchors.fill: parent

        sourceComponent: Protection {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "protectionScreen"
            protection: turns.models.protection
            onWhoAsked: turns.whoAsked()
        }
    }
    Turn {
        id: limitsTurn
        shown: turns.work === Navigation.Limits
        anchors.fill: parent

        sourceComponent: Limits {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "limitsScreen"
            wide: turns.wide
            limits: turns.models.limits
            onWhoAsked: turns.whoAsked()
        }
    }
    Turn {
        id: exposureTurn
        shown: turns.work === Navigation.Exposure
        anchors.fill: parent

        sourceComponent: Exposure {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "exposureScreen"
            wide: turns.wide
            exposure: turns.models.exposure
            me: turns.models.session.personId
            onWhoAsked: turns.whoAsked()
        }
    }
}
