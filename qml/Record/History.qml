// History: one car over time: lanes with a handle that is dragged or stepped, the car as it was at the
// handle with its marks, and what was said up to then; an entry opens as it is kept.
// history, inspect (the drawing of the body): view models; wide: map and list beside each other.
// Keys on the lanes: arrows step entry by entry, with Shift by ten, Home and End. Signals:
// pictureAsked(picture), whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Job
import Jambline.Screens

FocusScope {
    id: page

    required property HistoryViewModel history
    required property InspectViewModel inspect
    property bool wide: false
    property real undoRoom: 0  // kept free at the foot
    readonly property real actsTop: height
    readonly property real ring: 6
    readonly property real room: width - 2 * Theme.gutter
    readonly property real listWidth: wide ? Math.round((room - Theme.gutter) / 2) : room
    readonly property real mapWidth: wide ? room - listWidth - Theme.gutter : room
    readonly property real mapHeight: wide ? Math.max(200, height - then.y - legend.height - Theme.gap - undoRoom)
                                           : 280
    // Large words: the list keeps room for an entry, and the window scrolls.
    implicitHeight: then.y + (wide ? Math.max(320, 200 + legend.height + Theme.gap) : 280 + legend.height + Theme.gap + 240) + undoRoom

    signal pictureAsked(string picture)
    signal whoAsked

    Component.onCompleted: history.wake()
    Component.onDestruction: history.rest()

    Connections {
        target: page.history.timeLine
        function onOpenChanged() {
            sheet.opened = page.history.timeLine.opened;
        }
    }

    Connections {
        target: page.history
        function onHandleChanged() {
            list.positionViewAtBeginning();
        }
    }
    Lanes {
        id: lanes
        objectName: "historyLanes"
        x: Theme.gutter
        y: Theme.gap
        width: page.room
        height: implicitHeight
        focus: true
        name: qsTr("The car over time")
        lanes: page.history.lanes
        marks: page.history.marks
        start: page.history.startMs
        end: page.history.endMs
        position: page.history.handleMs
        step: 0
        handleText: page.history.handleWords
        emptyText: page.history.settled ? qsTr("Nothing happened yet") : qsTr("The entries are being read.")
        onMoved: position => page.history.moveTo(position)
        onStepAsked: by => page.history.step(by)
    }
    Item {
        id: then
        x: Theme.gutter
        y: lanes.y + lanes.height + Theme.gap
        width: page.mapWidth
        height: page.mapHeight

        PatternMap {
            id: map
            objectName: "historyMap"
            anchors.fill: parent
            inspect: page.inspect
            still: true
            past: true
            then: page.history.panels
            Accessible.role: Accessible.Graphic
            Accessible.name: qsTr("The car then: %1").arg(page.history.markWords)

            Repeater {
                id: marks
                model: page.history.carMarks

                Item {
                    id: mark

                    required property string ofMark
                    required property int number
                    required property real xMm
                    required property real yMm
                    required property bool ended
                    required property bool cameBack
                    required property string spoken

                    objectName: "historyMark"
                    x: map.xPx(xMm)
                    y: map.yPx(yMm)
                    Accessible.role: Accessible.StaticText
                    Accessible.name: spoken

                    Rectangle {
                        visible: mark.cameBack
                        x: -width / 2
                        y: -height / 2
                        width: 44
                        height: 44
                        radius: 22
                        color: "transparent"
                        border.width: 2
                        border.color: Theme.oxide
                    }
                    PencilRing {
                        key: mark.ofMark
                        number: marks.count > 20 ? "" : String(mark.number)  // of many the numbers lie on each other
                        ended: mark.ended
                        size: 26
                    }
                }
            }
        }
    }
    Column {
        id: legend
        x: Theme.gutter
        y: then.y + then.height
        width: page.mapWidth
        spacing: 2

        Words {
            objectName: "historyMarks"
            width: parent.width
            text: qsTr("%1. Struck through: gone; double: came back.").arg(page.history.markWords)
            size: Theme.note
            color: Theme.pencil
        }
        Words {
            objectName: "historyAir"
            width: parent.width
            visible: text !== ""
            text: page.history.airWords
            size: Theme.note
            color: Theme.pencil
        }
    }
    ListView {
        id: list
        objectName: "historyList"
        x: (page.wide ? 2 * Theme.gutter + page.mapWidth : Theme.gutter) - page.ring
        y: page.wide ? then.y : legend.y + legend.height + Theme.gap
        width: page.listWidth + 2 * page.ring
        height: page.height - y - page.undoRoom
        model: page.history
        clip: true
        spacing: 4
        topMargin: page.ring
        cacheBuffer: 0  // rows ahead of sight are made piece by piece
        boundsBehavior: Flickable.StopAtBounds
        section.property: "day"
        delegate: Column {
            id: slot

            required property int index
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

            x: page.ring
            width: page.listWidth

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
                chosen: slot.index === 0
                time: slot.time
                person: slot.person
                words: slot.words
                takenBack: slot.takenBack
                takenBackWords: slot.takenBackWords
                doubt: slot.doubt
                file: slot.file
                refused: slot.refused
                store: page.history.timeLine.store
                onClicked: page.history.timeLine.open(slot.entryId)
            }
        }
        Accessible.role: Accessible.List
        Accessible.name: qsTr("What was said up to %1, newest first").arg(page.history.handleWords)
    }
    AmendSheet {
        objectName: "historyAmend"
        anchors.fill: parent
        amend: page.history.timeLine.amend
        onWhoAsked: page.whoAsked()
    }
    EntrySheet {
        id: sheet
        objectName: "historyEntry"
        anchors.fill: parent
        timeLine: page.history.timeLine
        side: page.wide
        onPictureAsked: picture => page.pictureAsked(picture)
    }
}
