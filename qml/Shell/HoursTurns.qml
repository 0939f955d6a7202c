// HoursTurns: the hours of people, those of the car, and how long records are kept, each in its turn.
// work: what is shown. shown: it is one of these; item: its screen. Signals: whoAsked,
// forgetAsked(personId).
// Qt 6.4 makes no Loader's component in a file with bound components, so ids are reached unbound here.
// qmllint disable unqualified
import QtQuick
import Jambline.Record

FocusScope {
    id: turns

    required property ViewModels models
    property int work: Navigation.None
    property bool wide: false
    property real undoRoom: 0
    readonly property Turn front: hoursTurn.shown ? hoursTurn : keepTurn.shown ? keepTurn : carTurn
    readonly property bool shown: front.shown
    readonly property var item: front.item

    signal whoAsked
    signal forgetAsked(string personId)

    visible: shown
    focus: shown

    Turn {
        id: hoursTurn
        shown: turns.work === Navigation.Hours
        anchors.fill: parent

        sourceComponent: Hours {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "hoursScreen"
            wide: turns.wide
            hours: turns.models.hours
            onWhoAsked: turns.whoAsked()
        }
    }
    Turn {
        id: keepTurn
        shown: turns.work === Navigation.KeepAndForget
        anchors.fill: parent

        sourceComponent: KeepAndForget {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "keepScreen"
            wide: turns.wide
            keep: turns.models.retention
            onWhoAsked: turns.whoAsked()
            onForgetAsked: personId => turns.forgetAsked(personId)
        }
    }
    Turn {
        id: carTurn
        shown: turns.work === Navigation.CarHours
        anchors.fill: parent

        sourceComponent: CarHours {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "carHoursScreen"
            wide: turns.wide
            hours: turns.models.carHours
            onWhoAsked: turns.whoAsked()
        }
    }
}
