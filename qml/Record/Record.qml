// Record: all cars of the shop, newest first, with one search box; cards, from 1200 on a table.
// "Check all entries" opens the check. record: the view model; wide: sheets come from the side.
// Signal: carAsked(jobId).
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

    signal carAsked(string jobId)

    function focusSearch() {
        search.focusField();
    }

    Component.onCompleted: record.wake()

    Item {
        id: head
        x: Theme.gutter
        y: Theme.gap
        width: page.width - 2 * Theme.gutter
        height: page.tabled ? Math.max(search.height, check.height) : check.y + check.height

        FaceField {
            id: search
            objectName: "recordSearch"
            width: page.tabled ? Math.min(520, parent.width / 2) : parent.width
            label: qsTr("Search")
            placeholder: qsTr("Plate, VIN, color")
            iconName: "search"
            text: page.record.search
            onEdited: text => page.record.search = text
        }
        Words {
            id: count
            objectName: "recordCount"
            x: page.tabled ? search.width + Theme.gutter : 0
            y: check.y + (check.height - height) / 2
            width: check.x - x - Theme.gap
            text: page.record.countWords
            size: Theme.note
            color: Theme.pencil
        }
        PlainButton {
            id: check
            objectName: "recordCheck"
            x: parent.width - width
            y: page.tabled ? search.height - height : search.height + Theme.gap
            width: Math.min(parent.width * 0.7, Math.max(180, implicitWidth))
            text: qsTr("Check all entries")
            onClicked: integrity.opened = true
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
