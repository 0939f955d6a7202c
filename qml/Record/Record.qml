// Record: all cars of the shop: one search box, a sentence that chooses further, kept questions; the
// cars as cards, from 1200 on as a table, from 840 on with the chosen car beside them.
// record: the view model; wide: sheets come from the side. "/" and Ctrl+F go to the search, Esc
// empties it, then lets the car go. Signals: carAsked(jobId); historyAsked(entryId), of the car on the
// tape, "" where it ends; entryAsked(jobId, entryId); dirtAsked, hoursAsked, sendingAsked, devicesAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property RecordViewModel record
    required property QuestionViewModel ask
    property bool wide: false
    property real undoRoom: 0  // kept free at the foot
    readonly property real actsTop: height
    readonly property bool tabled: width >= 1200
    readonly property bool folds: width < 840  // the ways to other pages stand behind one line
    readonly property real ring: 6  // room for the outline of what has the focus
    readonly property bool beside: width >= 840 && record.car.job !== ""
    readonly property real paneWidth: tabled ? Math.min(540, width * 0.38) : Math.round((width - 3 * Theme.gutter) * 0.5)
    readonly property real listWidth: width - 2 * Theme.gutter - (beside ? paneWidth + Theme.gutter : 0)
    // Large words: the list keeps room for a car, and the window scrolls.
    implicitHeight: body.y + 240 + undoRoom

    signal carAsked(string jobId)
    signal historyAsked(string entryId)
    signal questionAsked(string key)
    signal entryAsked(string jobId, string entryId)
    signal devicesAsked
    signal dirtAsked
    signal hoursAsked
    signal sendingAsked

    function focusSearch() {
        search.focusField();
    }

    function toList() {
        if (tabled)
            table.forceActiveFocus();
        else
            list.go(0);
    }

    function take(jobId: string) {
        if (width >= 840 && record.car.job !== jobId)
            record.car.choose(jobId);
        else
            carAsked(jobId);
    }

    property ListSlots slots: ListSlots {
        head: page.tabled ? 0 : page.ring + controls.height + Theme.gap
        foot: emptyCard.visible ? emptyCard.height + Theme.gap : 0
        onHeadChanged: Qt.callLater(list.positionViewAtBeginning) // qmllint disable
    }

    Component.onCompleted: record.wake()

    Keys.onPressed: event => {
        event.accepted = true;
        if (event.key === Qt.Key_Slash || (event.key === Qt.Key_F && event.modifiers & Qt.ControlModifier))
            search.focusField();
        else if (event.key === Qt.Key_Escape && record.search !== "")
            record.search = "";
        else if (event.key === Qt.Key_Escape && beside)
            record.car.choose("");
        else
            event.accepted = false;
    }

    FaceField {
        id: search
        objectName: "recordSearch"
        x: Theme.gutter
        y: Theme.gap
        width: page.tabled ? Math.min(520, page.width / 2) : page.listWidth
        label: qsTr("Search")
        placeholder: qsTr("Plate, VIN, note, name")
        iconName: "search"
        text: page.record.search
        onEdited: text => page.record.search = text
        onAccepted: page.toList()
        Keys.onDownPressed: page.toList()
    }
    RecordActs {
        id: acts
        parent: page.tabled ? page : page.folds ? questions.place : above
        x: page.tabled ? page.width - width - Theme.gutter : 0
        y: page.tabled ? search.y + Math.max(0, search.height - height) : 0
        width: page.tabled ? Math.min(520, page.width / 2 - 3 * Theme.gutter) : parent?.width ?? 0
        onDirtAsked: page.dirtAsked()
        onHoursAsked: page.hoursAsked()
        onCheckAsked: integrity.opened = true
        onSendingAsked: page.sendingAsked()
    }
    Column {
        id: controls
        parent: page.tabled ? page : list.headerItem
        x: page.tabled ? Theme.gutter : page.ring
        y: page.tabled ? Math.max(search.y + search.height, acts.y + acts.height) + Theme.gap : page.ring
        width: page.tabled ? page.width - 2 * Theme.gutter : page.listWidth
        spacing: Theme.gap

        Item {
            id: above
            visible: !page.tabled && !page.folds
            width: parent.width
            height: acts.height
        }
        QuestionRows {
            id: questions
            width: parent.width
            visible: page.record.search === ""
            ask: page.ask
            foldWords: page.folds ? qsTr("Hours, dirt, checks, questions") : qsTr("Questions of months and years")
            onQuestionAsked: key => page.questionAsked(key)
        }
        SentenceFilter {
            id: question
            objectName: "recordQuestion"
            width: parent.width
            parts: page.record.filter.sentence
            openKey: choices.opened ? choices.key : ""
            tail: page.record.countWords
            onWordPressed: key => choices.ask(key)
            onWordDropped: key => page.record.filter.leaveOut(key)
        }
        KeptQuestions {
            width: parent.width
            visible: used
            filter: page.record.filter
            onKeepAsked: naming.ask(false)
            onChangeAsked: naming.ask(true)
        }
    }
    Item {
        id: body
        x: Theme.gutter
        y: (page.tabled ? controls.y + controls.height : search.y + search.height) + Theme.gap
        width: page.listWidth
        height: page.height - y - page.undoRoom

        ListView {
            id: list
            objectName: "recordCards"
            x: -page.ring
            width: parent.width + 2 * page.ring
            height: parent.height
            visible: !page.tabled
            model: page.tabled ? null : page.record
            cacheBuffer: 0  // rows ahead of sight are made piece by piece and lie at the top until they are whole
            clip: true
            spacing: Theme.gap
            boundsBehavior: Flickable.StopAtBounds
            header: page.slots.header
            footer: page.slots.footer
            function go(row: int) {
                if (row < 0 || row >= count)
                    return;
                positionViewAtIndex(row, ListView.Contain);
                (itemAtIndex(row) as RecordCard)?.forceActiveFocus();
            }

            delegate: RecordCard {
                required property int index

                x: page.ring
                width: page.listWidth
                chosen: page.beside && page.record.car.job === jobId
                onClicked: page.take(jobId)
                Keys.onDownPressed: list.go(index + 1)
                Keys.onUpPressed: {
                    if (index === 0)
                        search.focusField();
                    else
                        list.go(index - 1);
                }
            }
            Accessible.role: Accessible.List
            Accessible.name: qsTr("Cars, %1").arg(page.record.countWords)
        }
        RecordTable {
            id: table
            anchors.fill: parent
            anchors.bottomMargin: Theme.gap
            visible: page.tabled && page.record.shown > 0
            record: page.record
            model: page.tabled ? page.record : null
            onPicked: row => page.record.car.choose(page.record.jobIdAt(row))
            onCarAsked: jobId => page.carAsked(jobId)
        }
        PaperCard {
            id: emptyCard
            objectName: "recordEmpty"
            parent: page.tabled ? body : list.footerItem
            x: page.tabled ? 0 : page.ring
            width: Math.min(page.listWidth, 560)
            visible: page.record.loaded && page.record.shown === 0
            dashed: true

            Column {
                width: parent.width
                spacing: Theme.gap

                Hatch {
                    width: parent.width
                    height: 44
                    radius: Theme.corner
                }
                Words {
                    width: parent.width
                    text: page.record.emptyWords
                    wrapMode: Text.WrapAtWordBoundaryOrAnywhere
                }
                PlainButton {
                    objectName: "dropWord"
                    width: Math.min(parent.width, Math.max(200, implicitWidth))
                    height: implicitHeight
                    visible: page.record.mayDropWord
                    pressable: visible
                    text: qsTr("Search without the last word")
                    onClicked: page.record.dropLastWord()
                }
            }
        }
    }
    Connections {
        target: page.record
        function onModelReset() {
            table.chosen = page.record.rowOf(page.record.car.job);
        }
    }
    RecordPane {
        id: pane
        objectName: "recordPane"
        x: page.width - width - Theme.gutter
        y: page.tabled ? body.y : Theme.gap
        width: page.paneWidth
        height: page.height - y - Theme.gap - page.undoRoom
        visible: page.beside
        car: page.record.car
        onCarAsked: page.carAsked(page.record.car.job)
        onHistoryAsked: entryId => page.historyAsked(entryId)
    }
    FilterSheet {
        id: choices
        objectName: "filterSheet"
        anchors.fill: parent
        filter: page.record.filter
        side: page.wide
    }
    KeptQuestionSheet {
        id: naming
        objectName: "questionSheet"
        anchors.fill: parent
        filter: page.record.filter
        side: page.wide
    }
    Integrity {
        id: integrity
        objectName: "integritySheet"
        anchors.fill: parent
        integrity: page.record.integrity
        side: page.wide
    }
    Connections {
        target: page.record.integrity
        function onEntryAsked(jobId, entryId) {
            integrity.close();
            page.entryAsked(jobId, entryId);
        }
        function onDevicesAsked() {
            integrity.close();
            page.devicesAsked();
        }
    }
}
