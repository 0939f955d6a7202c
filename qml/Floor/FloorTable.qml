// FloorTable: the cars in the shop on a desk, in the same two groups and the same order as the
// cards, with when each will be ready and what holds it. Without room for them who, stages and hours
// have no column of their own, and the chance stands below the promise. floor: the view model.
// Signal: carAsked(jobId), by a press or by Enter.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

DataTable {
    id: cars
    objectName: "floorTable"

    required property FloorViewModel floor
    readonly property bool roomy: width >= 1000 * Theme.textScale
    property GroupTitles groups: GroupTitles {}

    signal carAsked(string jobId)

    name: floor.countWords
    model: floor.rows
    sectionProperty: "group"
    sectionDelegate: groups.title
    columns: [
        TableColumn { title: qsTr("Car"); width: cars.roomy ? 220 : 165; sortable: false },
        TableColumn { title: qsTr("Next"); fill: true; sortable: false },
        TableColumn { title: qsTr("Who"); width: 140; shown: cars.roomy; sortable: false },
        TableColumn { title: qsTr("Promised"); width: cars.roomy ? 100 : 136; sortable: false },
        TableColumn { title: qsTr("Chance"); width: 132; shown: cars.roomy; sortable: false },
        TableColumn { title: qsTr("Ready by"); fill: true; sortable: false },
        TableColumn { title: qsTr("Stages"); width: 56; shown: cars.roomy; sortable: false; alignRight: true },
        TableColumn { title: qsTr("Hours"); width: 120; shown: cars.roomy; sortable: false; alignRight: true }
    ]
    onOpened: row => carAsked(floor.jobIdAt(row))

    delegate: DataRow {
        id: row

        required property string jobId
        required property string plate
        required property string carWords
        required property string next
        required property string who
        required property string due
        required property string promised
        required property string chance
        required property string about
        required property string percent
        required property int outlook
        required property string ready
        required property string earliest
        required property string holds
        required property string slack
        required property bool waits
        required property string held
        required property int shape
        required property string progress
        required property string stages
        required property string hours
        required property bool onTape

        table: cars
        marked: onTape
        name: Array.from([plate, carWords, held, next, who, due, chance, about, percent, ready, earliest, holds, slack, progress, hours]).filter(words => words !== "").join(", ")
            + qsTr(". Opens the car.")
        onClicked: cars.carAsked(jobId)

        Column {
            x: cars.cellX(0)
            width: cars.cellWidth(0)
            anchors.verticalCenter: parent.verticalCenter

            TapeLabel {
                width: Math.min(implicitWidth, parent.width)
                lift: 32
                text: row.plate
                key: row.jobId
                pressable: false
                Accessible.ignored: true
            }
            Words {
                width: parent.width
                text: row.carWords
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
        }
        StateShape {
            id: mark
            x: cars.cellX(1)
            anchors.verticalCenter: parent.verticalCenter
            kind: row.shape
            key: row.jobId
            size: 24
        }
        Column {
            x: mark.x + mark.width + 10
            width: cars.cellWidth(1) - mark.width - 10
            anchors.verticalCenter: parent.verticalCenter

            Words {
                width: parent.width
                visible: text !== ""
                text: row.held
                mute: true
                bold: true
                color: Theme.oxide
            }
            Words {
                width: parent.width
                text: row.next
                mute: true
                bold: true
            }
            Words {
                width: parent.width
                visible: !cars.roomy
                text: row.who
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
        }
        Words {
            visible: cars.roomy
            x: cars.cellX(2)
            width: cars.cellWidth(2)
            anchors.verticalCenter: parent.verticalCenter
            text: row.who
            mute: true
        }
        Column {
            x: cars.cellX(3)
            width: cars.cellWidth(3)
            anchors.verticalCenter: parent.verticalCenter

            Words {
                width: parent.width
                text: row.promised
                mute: true
            }
            Odds {
                visible: !cars.roomy
                width: parent.width
                chance: row.chance
                percent: row.percent
                about: row.about
                outlook: row.outlook
            }
        }
        Odds {
            visible: cars.roomy
            x: cars.cellX(4)
            width: cars.cellWidth(4)
            anchors.verticalCenter: parent.verticalCenter
            chance: row.chance
            percent: row.percent
            about: row.about
            outlook: row.outlook
        }
        Column {
            x: cars.cellX(5)
            width: cars.cellWidth(5)
            anchors.verticalCenter: parent.verticalCenter

            Words {
                width: parent.width
                visible: text !== ""
                text: row.ready
                mute: true
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: Array.from([row.earliest, row.slack, row.waits || cars.roomy || row.ready === "" ? row.holds : ""]).filter(
                    words => words !== "").join(" · ")
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
        }
        Words {
            visible: cars.roomy
            x: cars.cellX(6)
            width: cars.cellWidth(6)
            anchors.verticalCenter: parent.verticalCenter
            horizontalAlignment: Text.AlignRight
            text: row.stages
            mute: true
        }
        Words {
            visible: cars.roomy
            x: cars.cellX(7)
            width: cars.cellWidth(7)
            anchors.verticalCenter: parent.verticalCenter
            horizontalAlignment: Text.AlignRight
            text: row.hours
            mute: true
        }
    }
}
