// QuestionPage: one question of a manager: the time, the answer in a sentence, bars, and rows that
// open to cars and entries; a table beside on a desk. ask: the view model; wide: rows beside.
// Signals: carAsked(jobId), entryAsked(jobId, entryId), recordAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property QuestionViewModel ask
    property bool wide: false
    property real undoRoom: 0  // kept free above the act
    readonly property bool desk: width >= 1200
    readonly property bool shown: ask.state === QuestionViewModel.Shown
    readonly property real ring: 6  // room for the outline of what has the focus
    readonly property real leftWidth: wide ? Math.round((width - 3 * Theme.gutter) * 0.5) : width - 2 * Theme.gutter
    readonly property real foot: write.visible ? height - write.y + Theme.gap : Theme.gutter
    readonly property real actsTop: write.visible ? write.y : height
    readonly property real actsX: Theme.gutter
    readonly property real actsWidth: write.width

    signal carAsked(string jobId)
    signal entryAsked(string jobId, string entryId)
    signal recordAsked

    function openRow(key: string) {
        ask.openRow(key);
        cases.opened = true;
    }

    implicitHeight: 420 + undoRoom
    Accessible.role: Accessible.Pane
    Accessible.name: ask.title

    Component.onCompleted: ask.wake()
    Component.onDestruction: ask.rest()

    Flickable {
        id: sight
        objectName: "questionPage"
        x: Theme.gutter - page.ring
        width: page.leftWidth + 2 * page.ring
        height: page.height - page.foot - page.undoRoom
        contentWidth: width
        contentHeight: left.height + (page.wide ? 0 : rows.height + Theme.gutter)
        clip: true
        boundsBehavior: Flickable.StopAtBounds
        interactive: contentHeight > height

        Column {
            id: left
            x: page.ring
            width: page.leftWidth
            topPadding: Theme.gap
            bottomPadding: Theme.gap
            spacing: Theme.gap

            ActRow {
                width: parent.width

                PlainButton {
                    objectName: "questionMonth"
                    text: qsTr("Month")
                    chosen: page.ask.span === QuestionViewModel.Month
                    onClicked: page.ask.showSpan(QuestionViewModel.Month)
                }
                PlainButton {
                    objectName: "questionQuarter"
                    text: qsTr("Quarter")
                    chosen: page.ask.span === QuestionViewModel.Quarter
                    onClicked: page.ask.showSpan(QuestionViewModel.Quarter)
                }
                PlainButton {
                    objectName: "questionYear"
                    text: qsTr("Year")
                    chosen: page.ask.span === QuestionViewModel.Year
                    onClicked: page.ask.showSpan(QuestionViewModel.Year)
                }
            }
            ActRow {
                width: parent.width

                PlainButton {
                    objectName: "questionBefore"
                    text: qsTr("Before")
                    name: qsTr("The time before %1").arg(page.ask.timeTitle)
                    onClicked: page.ask.turn(-1)
                }
                PlainButton {
                    objectName: "questionNow"
                    text: qsTr("Now")
                    chosen: page.ask.isNow
                    onClicked: page.ask.toNow()
                }
                PlainButton {
                    objectName: "questionAfter"
                    text: qsTr("After")
                    name: qsTr("The time after %1").arg(page.ask.timeTitle)
                    dashed: page.ask.isNow
                    onClicked: page.ask.turn(1)
                }
            }
            QuestionChart {
                width: parent.width
                visible: page.ask.state !== QuestionViewModel.Waiting
                ask: page.ask
            }
            PaperCard {
                objectName: "questionEmpty"
                width: parent.width
                visible: !page.shown
                dashed: true

                Column {
                    width: parent.width
                    spacing: Theme.gap

                    Hatch {
                        width: parent.width
                        height: 72
                        radius: Theme.corner
                    }
                    Words {
                        width: parent.width
                        text: page.ask.emptyWords
                    }
                    PlainButton {
                        objectName: "questionEarlier"
                        width: Math.min(parent.width, Math.max(200, implicitWidth))
                        height: implicitHeight
                        visible: page.ask.state === QuestionViewModel.Nothing
                        pressable: visible
                        text: qsTr("The time before")
                        onClicked: page.ask.turn(-1)
                    }
                    PlainButton {
                        objectName: "questionToRecord"
                        width: Math.min(parent.width, Math.max(200, implicitWidth))
                        height: implicitHeight
                        visible: page.ask.state === QuestionViewModel.Nothing
                        pressable: visible
                        text: qsTr("To all cars")
                        onClicked: page.recordAsked()
                    }
                }
            }
        }
    }
    Flickable {
        id: beside
        objectName: "questionRows"
        x: page.leftWidth + 2 * Theme.gutter - page.ring
        width: page.width - x - Theme.gutter + page.ring
        height: sight.height
        visible: page.wide
        contentWidth: width
        contentHeight: rows.height
        clip: true
        boundsBehavior: Flickable.StopAtBounds
        interactive: contentHeight > height
    }
    Column {
        id: rows
        parent: page.wide ? beside.contentItem : sight.contentItem
        x: page.ring
        y: page.wide ? 0 : left.height
        width: page.wide ? beside.width - 2 * page.ring : page.leftWidth
        topPadding: page.wide ? Theme.gap : 0
        bottomPadding: Theme.gap
        spacing: Theme.gap

        ActRow {
            id: views
            width: parent.width
            visible: page.ask.views.length > 0

            Repeater {
                model: page.ask.views

                PlainButton {
                    required property int index
                    required property string modelData

                    objectName: "questionView" + index
                    text: modelData
                    chosen: page.ask.view === index
                    onClicked: page.ask.showView(index)
                }
            }
        }
        QuestionTable {
            objectName: "questionTable"
            width: parent.width
            height: Math.max(240, beside.height - (views.visible ? views.height + Theme.gap : 0) - 2 * Theme.gap)
            visible: page.desk && page.shown
            ask: page.ask
            model: page.desk && page.shown ? page.ask.rows : null
            onRowAsked: key => page.openRow(key)
        }
        QuestionCards {
            width: parent.width
            visible: listed
            listed: !page.desk && page.shown
            ask: page.ask
            onRowAsked: key => page.openRow(key)
        }
    }
    SlabButton {
        id: write
        objectName: "questionExport"
        x: Theme.gutter
        y: parent.height - height - Theme.gap
        width: page.leftWidth
        height: implicitHeight
        visible: page.shown
        text: qsTr("Export CSV")
        secondLine: qsTr("these rows, for other programs")
        onClicked: table.opened = true
    }
    CasesSheet {
        id: cases
        objectName: "casesSheet"
        anchors.fill: parent
        ask: page.ask
        onCarAsked: jobId => page.carAsked(jobId)
        onEntryAsked: (jobId, entryId) => page.entryAsked(jobId, entryId)
    }
    QuestionTableSheet {
        id: table
        objectName: "questionTableSheet"
        anchors.fill: parent
        ask: page.ask
    }
}
