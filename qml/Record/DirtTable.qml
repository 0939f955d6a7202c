// DirtTable: the cars of the chart with their numbers, newest first. dirt: the view model; model:
// its points. Signal: carAsked(jobId).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

DataTable {
    id: cars

    required property DirtOverTimeViewModel dirt

    signal carAsked(string jobId)

    readonly property bool compact: width < 600 * Theme.textScale + 110

    name: qsTr("Cars of the chart, newest first")
    columns: [
        TableColumn { title: qsTr("Car"); fill: true; sortable: false },
        TableColumn { title: qsTr("Sprayed"); width: 106; sortable: false; shown: !cars.compact },
        TableColumn { title: qsTr("Nibs"); width: 50; sortable: false; alignRight: true; shown: !cars.compact },
        TableColumn { title: qsTr("Area"); width: 74; sortable: false; alignRight: true; shown: !cars.compact },
        TableColumn { title: qsTr("Rate"); width: 56; sortable: false; alignRight: true },
        TableColumn { title: qsTr("Limits"); width: 106; sortable: false; alignRight: true; shown: !cars.compact },
        TableColumn { title: qsTr("Stands out"); fill: true; sortable: false; shown: !cars.compact }
    ]
    onPicked: row => dirt.choose(count - 1 - row)
    onOpened: carAsked(dirt.chosenJob)

    delegate: DataRow {
        id: row

        required property string plate
        required property string day
        required property string nibs
        required property string area
        required property string rate
        required property string limits
        required property string lookWords
        required property string said

        component Cell: Words {
            property int column: 0

            x: cars.cellX(column)
            visible: cars.columns[column].shown
            width: cars.cellWidth(column)
            anchors.verticalCenter: parent.verticalCenter
            horizontalAlignment: cars.columns[column].alignRight ? Text.AlignRight : Text.AlignLeft
            mute: true
        }

        table: cars
        name: row.said
        marked: cars.dirt.chosen >= 0 && cars.dirt.chosen === cars.count - 1 - index

        Column {
            x: cars.cellX(0)
            width: cars.cellWidth(0)
            anchors.verticalCenter: parent.verticalCenter

            Words {
                width: parent.width
                text: row.plate
                mute: true
                bold: true
            }
            Words {
                width: parent.width
                visible: cars.compact
                text: qsTr("%1: %2 nibs, %3; limits %4").arg(row.day).arg(row.nibs).arg(row.area).arg(row.limits)
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
            Words {
                width: parent.width
                visible: cars.compact && text !== ""
                text: row.lookWords
                mute: true
                size: Theme.note
            }
        }
        Cell { column: 1; text: row.day }
        Cell { column: 2; text: row.nibs }
        Cell { column: 3; text: row.area }
        Cell { column: 4; text: row.rate; bold: row.lookWords !== "" }
        Cell { column: 5; text: row.limits; color: Theme.pencil }
        Cell { column: 6; text: row.lookWords }
    }
}
