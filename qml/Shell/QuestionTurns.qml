// QuestionTurns: a manager's question in its turn. work: what is shown. shown: it is one of these;
// item: its screen. show(key) opens a question, showEntry(jobId, entryId) an entry in its car's time
// line, from which Back leads here again. Signal: carAsked(jobId).
import QtQuick
import Jambline.Record

FocusScope {
    id: turns

    required property ViewModels models
    required property Navigation way
    property int work: Navigation.None
    property bool wide: false
    property real undoRoom: 0
    property string entryWanted: ""
    readonly property bool shown: turn.shown
    readonly property var item: turn.item

    signal carAsked(string jobId)

    function show(key: string) {
        models.question.choose(key);
        way.go(Navigation.Question);
    }

    function showEntry(jobId: string, entryId: string) {
        entryWanted = entryId;
        models.session.openCar(jobId);
        way.go(Navigation.TimeLine);
        way.timeLineFrom = Navigation.Question;
        Qt.callLater(openWanted); // qmllint disable
    }

    // The car comes a moment later, and its entries with it.
    function openWanted() {
        if (entryWanted === "" || work !== Navigation.TimeLine || !models.session.hasCar)
            return;
        models.timeLine.open(entryWanted);
        if (models.timeLine.opened)
            entryWanted = "";
    }

    visible: shown
    focus: shown
    onWorkChanged: {
        if (work !== Navigation.TimeLine)
            entryWanted = "";
    }

    Connections {
        target: turns.models.session
        enabled: turns.entryWanted !== ""
        function onSnapshotChanged() { Qt.callLater(turns.openWanted); } // qmllint disable
    }
    // Qt 6.4 makes no Loader's component in a file with bound components, so ids are reached unbound here.
    // qmllint disable unqualified
    Turn {
        id: turn
        shown: turns.work === Navigation.Question
        anchors.fill: parent

        sourceComponent: QuestionPage {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "questionScreen"
            wide: turns.wide
            ask: turns.models.question
            onCarAsked: jobId => turns.carAsked(jobId)
            onEntryAsked: (jobId, entryId) => turns.showEntry(jobId, entryId)
            onRecordAsked: turns.way.go(Navigation.None)
        }
    }
}
