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

    name: qsTr("Cars of the chart, newest first")
    columns: [
        TableColumn { title: qsTr("Sprayed"); width: 104; sortable: false },
        TableColumn { title: qsTr("Car"); width: 110; sortable: false },
        TableColumn { title: qsTr("Nibs"); width: 50; sortable: false; alignRight: true },
        TableColumn { title: qsTr("Area"); width: 74; sortable: false; alignRight: true },
        TableColumn { title: qsTr("Rate"); width: 56; sortable: false; alignRight: true },
        TableColumn { title: qsTr("Limits"); width: 100; sortable: false; alignRight: true },
        TableColumn { title: qsTr("Stands out"); fill: true; sortable: false }
    ]
    onChosenChanged: if (chosen >= 0) dirt.choose(count - 1 - chosen)
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
            width: cars.cellWidth(column)
            anchors.verticalCenter: parent.verticalCenter
            horizontalAlignment: cars.columns[column].alignRight ? Text.AlignRight : Text.AlignLeft
            mute: true
        }

        table: cars
        name: row.said

        Cell { column: 0; text: row.day }
        Cell { column: 1; text: row.plate; bold: true }
        Cell { column: 2; text: row.nibs }
        Cell { column: 3; text: row.area }
        Cell { column: 4; text: row.rate; bold: row.lookWords !== "" }
        Cell { column: 5; text: row.limits; color: Theme.pencil }
        Cell { column: 6; text: row.lookWords }
    }
}
