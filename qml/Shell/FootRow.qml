// FootRow: the row above the acts of every screen: the last minute of a time that counts down, else
// what was done and its undo, else a time that is over and not logged. shell, countdown: the view
// models; away: the screen has no room for it; noUndo: none for an undo; atBooth: the booth that is looked at, whose own time
// needs no row. shown; room: what it takes. Signals: undone, boothAsked(booth).
import QtQuick
import Jambline.Theme
import Jambline.Screens

Item {
    id: foot

    required property ShellViewModel shell
    required property CountdownViewModel countdown
    property bool away: false
    property bool noUndo: false
    property string atBooth: ""
    readonly property bool undoes: shell.undoShown && shell.undoPossible && !away && !noUndo
    readonly property bool counts: countdown.rowShown && !away && !(countdown.rowOver && undoes)
        && (countdown.rowBooth === "" || countdown.rowBooth !== atBooth)
    readonly property bool shown: undoes || counts
    readonly property real room: shown ? height + 8 : 0

    signal undone
    signal boothAsked(string booth)

    height: counts ? time.implicitHeight : undo.implicitHeight

    UndoRow {
        id: undo
        objectName: "undoRow"
        visible: foot.undoes && !foot.counts
        width: parent.width
        height: implicitHeight
        text: foot.shell.undoWords
        shape: foot.shell.undoShape
        mode: foot.shell.undoTakenBack ? UndoRow.Withdrawn : UndoRow.Fresh
        onUndone: foot.undone()
    }
    CountdownRow {
        id: time
        objectName: "countdownRow"
        visible: foot.counts
        width: parent.width
        height: implicitHeight
        words: foot.countdown.rowWords
        shape: foot.countdown.rowShape
        over: foot.countdown.rowOver
        onClicked: {
            if (foot.countdown.rowBooth !== "")
                foot.boothAsked(foot.countdown.rowBooth);
        }
    }
}
