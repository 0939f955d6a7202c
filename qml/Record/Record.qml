// Record: all cars of the shop, newest first, with one search box; cards, from 1200 on a table.
// "Dirt over time", "Hours" and "Sending" ask for those pages, "Check all" opens the check. record: the
// view model; wide: sheets come from the side. Signals: carAsked(jobId), dirtAsked, hoursAsked, sendingAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property RecordViewModel record
    property bool wide: false
    property real undoRoom: 0  // kept free at the foot
    readonly property real actsTop: height
    readonly property bool tabled: width >= 1200
    // Large words: the list keeps room for a car, and the window scrolls.
    implicitHeight: body.y + Math.max(240, emptyCard.visible ? emptyCard.height + Theme.gap : 0) + undoRoom

    signal carAsked(string jobId)
    signal dirtAsked
    signal hoursAsked
    signal sendingAsked

    function focusSearch() {
        search.focusField();
    }

    Component.onCompleted: record.wake()

    Item {
        id: head
        x: Theme.gutter
        y: Theme.gap
        width: page.width - 2 * Theme.gutter
        height: page.tabled ? Math.max(search.height, acts.height) : count.y + count.height

        FaceField {
            id: search
            objectName: "recordSearch"
            width: page.tabled ? Math.min(520, parent.width / 2) : parent.width
            label: qsTr("Search")
            placeholder: qsTr("Plate, VIN, note, name")
            iconName: "search"
            text: page.record.search
            onEdited: text => page.record.search = text
        }
        Flow {
            id: acts

            readonly property real wanted: dirt.implicitWidth + hours.implicitWidth + check.implicitWidth + sending.implicitWidth + 3 * spacing
            readonly property bool fits: wanted <= width
            readonly property bool paired: 2 * Math.max(dirt.implicitWidth, hours.implicitWidth, check.implicitWidth, sending.implicitWidth) + spacing <= width

            function part(natural: real): real {
                return fits ? Math.floor(natural + (width - wanted) / 4) : paired ? Math.floor((width - spacing) / 2) : width;
            }

            x: parent.width - width
            y: page.tabled ? Math.max(0, search.height - height) : search.height + Theme.gap
            width: page.tabled ? Math.min(520, parent.width / 2 - Theme.gutter) : parent.width
            spacing: Theme.gap

            PlainButton {
                id: dirt
                objectName: "recordDirt"
                width: acts.part(implicitWidth)
                height: implicitHeight
                text: qsTr("Dirt over time")
                onClicked: page.dirtAsked()
            }
            PlainButton {
                id: hours
                objectName: "recordHours"
                width: acts.part(implicitWidth)
                height: implicitHeight
                text: qsTr("Hours")
                onClicked: page.hoursAsked()
            }
            PlainButton {
                id: check
                objectName: "recordCheck"
                width: acts.part(implicitWidth)
                height: implicitHeight
                text: qsTr("Check all")
                onClicked: integrity.opened = true
            }
            PlainButton {
                id: sending
                objectName: "recordSending"
                width: acts.part(implicitWidth)
                height: implicitHeight
                text: qsTr("Sending")
                name: qsTr("Sending, and the devices of the shop")
                onClicked: page.sendingAsked()
            }
        }
        Words {
            id: count
            objectName: "recordCount"
            x: page.tabled ? search.width + Theme.gutter : 0
            y: page.tabled ? acts.y + (acts.height - height) / 2 : acts.y + acts.height + Theme.gap
            width: page.tabled ? acts.x - x - Theme.gap : parent.width
            text: page.record.countWords
            size: Theme.note
            color: Theme.pencil
        }
    }
    Item {
        id: body
        x: Theme.gutter
        width: page.width - 2 * Theme.gutter
        anchors { top: head.bottom; topMargin: Theme.gap; bottom: parent.bottom; bottomMargin: page.undoRoom }

        ListView {
            id: list
            objectName: "recordCards"
            anchors.fill: parent
            visible: !page.tabled && page.record.shown > 0
            model: page.tabled ? null : page.record
            clip: true
            spacing: Theme.gap
            boundsBehavior: Flickable.StopAtBounds
            delegate: RecordCard {
                width: list.width
                onClicked: page.carAsked(jobId)
            }
            Accessible.role: Accessible.List
            Accessible.name: qsTr("Cars, %1").arg(count.text)
        }
        RecordTable {
            anchors.fill: parent
            anchors.bottomMargin: Theme.gap
            visible: page.tabled && page.record.shown > 0
            record: page.record
            model: page.tabled ? page.record : null
            onCarAsked: jobId => page.carAsked(jobId)
        }
        PaperCard {
            id: emptyCard
            objectName: "recordEmpty"
            width: Math.min(parent.width, 560)
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
                    text: page.record.empty ? qsTr("No car was opened yet. Every car that is opened stays here.")
                                            : qsTr("No car fits \"%1\".").arg(page.record.search)
                }
                PlainButton {
                    objectName: "dropWord"
                    width: Math.min(parent.width, Math.max(200, implicitWidth))
                    visible: !page.record.empty
                    text: qsTr("Search without the last word")
                    onClicked: page.record.dropLastWord()
                }
            }
        }
    }
    Integrity {
        id: integrity
        objectName: "integritySheet"
        anchors.fill: parent
        integrity: page.record.integrity
        side: page.wide
    }
}
