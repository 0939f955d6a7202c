// TimeLine: the entries of the car on the tape in words, by day, newest first; filter by what they
// are about; a row opens to its raw record and can be taken back there; the car's report and bundle are
// made from here. timeLine, report, bundle: the view models;
// wide: the record stands beside the list instead of coming up from below.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property TimeLineViewModel timeLine
    required property ReportViewModel report
    required property BundleViewModel bundle
    property bool wide: false
    property real undoRoom: 0  // kept free at the foot
    // Large words: the list keeps room for an entry, and the window scrolls.
    implicitHeight: out.y + out.height + Theme.gap + 240 + undoRoom
    readonly property real actsTop: height

    signal pictureAsked(string picture)
    signal historyAsked
    signal whoAsked

    Connections {
        target: page.timeLine
        function onOpenChanged() {
            sheet.opened = page.timeLine.opened;
        }
    }

    Flow {
        id: chips

        readonly property real equal: (width - 2 * spacing) / 3

        x: Theme.gutter
        y: Theme.gap
        width: page.width - 2 * Theme.gutter
        spacing: 5
        Accessible.role: Accessible.Grouping
        Accessible.name: qsTr("What to show")

        Repeater {
            model: [
                { group: TimeLineViewModel.All, words: qsTr("All") },
                { group: TimeLineViewModel.Looks, words: qsTr("Looks") },
                { group: TimeLineViewModel.Hours, words: qsTr("Hours") },
                { group: TimeLineViewModel.HandOff, words: qsTr("Hand-off") },
                { group: TimeLineViewModel.Air, words: qsTr("Air") },
                { group: TimeLineViewModel.Notes, words: qsTr("Notes") }
            ]

            PlainButton {
                required property var modelData

                objectName: "group_" + modelData.group
                width: page.wide ? Math.max(112, implicitWidth) : Math.max(72 * Theme.textScale, chips.equal)
                text: modelData.words
                textSize: Theme.note
                chosen: page.timeLine.group === modelData.group
                onClicked: page.timeLine.group = modelData.group
            }
        }
        PlainButton {
            objectName: "timeLineHistory"
            width: page.wide ? Math.max(112, implicitWidth) : chips.width
            height: implicitHeight
            visible: !page.timeLine.empty
            pressable: visible
            text: qsTr("Over time")
            name: qsTr("The car over time, with a handle")
            textSize: Theme.note
            onClicked: page.historyAsked()
        }
    }
    Words {
        id: count
        objectName: "timeLineCount"
        x: Theme.gutter
        anchors.top: chips.bottom
        anchors.topMargin: Theme.gap
        width: page.width - 2 * Theme.gutter
        text: page.timeLine.countWords
        size: Theme.note
        color: Theme.pencil
    }
    ActRow {
        id: out
        x: Theme.gutter
        anchors.top: count.bottom
        anchors.topMargin: Theme.gap
        width: list.width
        visible: !page.timeLine.empty
        height: visible ? implicitHeight : 0

        PlainButton {
            objectName: "reportAsked"
            text: qsTr("Report")
            secondLine: qsTr("a PDF to read or print")
            onClicked: page.report.ask()
        }
        PlainButton {
            objectName: "bundleAsked"
            text: qsTr("Bundle")
            secondLine: qsTr("anybody can check it")
            onClicked: page.bundle.ask()
        }
    }
    ListView {
        id: list
        objectName: "timeLineList"
        anchors { top: out.bottom; topMargin: Theme.gap; bottom: parent.bottom; bottomMargin: page.undoRoom }
        x: Theme.gutter
        width: Math.min(page.width - 2 * Theme.gutter, 920)
        model: page.timeLine
        clip: true
        focus: true
        spacing: 4
        boundsBehavior: Flickable.StopAtBounds
        section.property: "day"
        delegate: Column {
            id: slot

            required property string entryId
            required property string day
            required property string time
            required property string person
            required property string words
            required property bool takenBack
            required property string takenBackWords
            required property string doubt
            required property string file
            required property string refused

            width: list.width

            Words {
                width: parent.width
                topPadding: 10
                bottomPadding: 8
                visible: slot.ListView.section !== slot.ListView.previousSection
                text: slot.day
                bold: true
                size: Theme.lead
                Accessible.role: Accessible.Heading
            }
            TimeLineRow {
                width: parent.width
                time: slot.time
                person: slot.person
                words: slot.words
                takenBack: slot.takenBack
                takenBackWords: slot.takenBackWords
                doubt: slot.doubt
                file: slot.file
                refused: slot.refused
                store: page.timeLine.store
                onClicked: page.timeLine.open(slot.entryId)
            }
        }
        Accessible.role: Accessible.List
        Accessible.name: qsTr("Time line, %1").arg(count.text)
    }
    PaperCard {
        objectName: "timeLineEmpty"
        x: Theme.gutter
        anchors.top: out.bottom
        anchors.topMargin: Theme.gap
        width: list.width
        visible: list.count === 0
        dashed: true

        Column {
            width: parent.width
            spacing: Theme.gap

            Hatch {
                width: parent.width
                height: 32
                radius: Theme.corner
            }
            Words {
                width: parent.width
                text: page.timeLine.empty ? qsTr("Nothing happened on this car yet.")
                                          : qsTr("No entry of this kind.")
            }
            PlainButton {
                visible: !page.timeLine.empty
                width: Math.min(parent.width, Math.max(200, implicitWidth))
                text: qsTr("Show all entries")
                onClicked: page.timeLine.group = TimeLineViewModel.All
            }
        }
    }
    ReportSheet {
        objectName: "reportSheet"
        anchors.fill: parent
        report: page.report
        side: page.wide
    }
    BundleSheet {
        objectName: "bundleSheet"
        anchors.fill: parent
        bundle: page.bundle
        side: page.wide
    }
    AmendSheet {
        objectName: "timeLineAmend"
        anchors.fill: parent
        amend: page.timeLine.amend
        onWhoAsked: page.whoAsked()
    }
    EntrySheet {
        id: sheet
        objectName: "entrySheet"
        anchors.fill: parent
        timeLine: page.timeLine
        side: page.wide
        onPictureAsked: picture => page.pictureAsked(picture)
    }
}
