// CarRecordTurns: the record of one car, as its time line and over time, each in its turn.
// work: what is shown. shown: it is one of these; item: its screen. showHistory(entryId): the car over
// time at an entry, "" where it ends. Signals: pictureAsked(picture, from), whoAsked.
// Qt 6.4 makes no Loader's component in a file with bound components, so ids are reached unbound here.
// qmllint disable unqualified
import QtQuick
import Jambline.Record

FocusScope {
    id: turns

    required property ViewModels models
    required property Navigation way
    property int work: Navigation.None
    property bool wide: false
    property real undoRoom: 0
    readonly property Turn front: timeLineTurn.shown ? timeLineTurn : historyTurn
    readonly property bool shown: front.shown
    readonly property var item: front.item

    signal pictureAsked(string picture, int from)
    signal whoAsked

    function showHistory(entryId: string) {
        way.historyFrom = way.work;
        way.go(Navigation.History);
        if (entryId !== "")
            models.history.showEntry(entryId);
    }

    visible: shown
    focus: shown

    Turn {
        id: timeLineTurn
        shown: turns.work === Navigation.TimeLine
        anchors.fill: parent

        sourceComponent: TimeLine {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "timeLineScreen"
            wide: turns.wide
            timeLine: turns.models.timeLine; report: turns.models.report; bundle: turns.models.bundle
            onPictureAsked: picture => turns.pictureAsked(picture, Navigation.TimeLine)
            onHistoryAsked: turns.showHistory("")
            onWhoAsked: turns.whoAsked()
        }
    }
    Turn {
        id: historyTurn
        shown: turns.work === Navigation.History
        anchors.fill: parent

        sourceComponent: History {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "historyScreen"
            wide: turns.wide
            history: turns.models.history
            inspect: turns.models.inspect
            onPictureAsked: picture => turns.pictureAsked(picture, Navigation.History)
            onWhoAsked: turns.whoAsked()
        }
    }
}
