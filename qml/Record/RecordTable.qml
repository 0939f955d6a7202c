// RecordTable: the cars of the record on a desk; sorted by its heads. Beside the pane of a car opened,
// delivered, marks and at last promised give way. record: the view model. Signal: carAsked(jobId).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

DataTable {
    id: cars
    objectName: "recordTable"

    required property RecordViewModel record
    readonly property bool roomy: width >= 1000 * Theme.textScale
    readonly property bool tight: width < 640 * Theme.textScale
    readonly property bool middling: width >= 840 * Theme.textScale

    signal carAsked(string jobId)

    name: qsTr("Cars")
    sortColumn: record.sortColumn
    sortDown: record.sortDown
    columns: [
        TableColumn { title: qsTr("Car"); width: 170 },
        TableColumn { title: qsTr("Color"); fill: true },
        TableColumn { title: qsTr("State"); fill: true },
        TableColumn { title: qsTr("Opened"); width: 110; shown: cars.middling },
        TableColumn { title: qsTr("Promised"); width: 110; shown: !cars.tight },
        TableColumn { title: qsTr("Delivered"); width: 110; shown: cars.roomy },
        TableColumn { title: qsTr("Hours"); width: 84; alignRight: true },
        TableColumn { title: qsTr("Marks open"); width: 110; shown: cars.roomy; alignRight: true }
    ]
    onSortAsked: column => record.sortBy(column)
    onOpened: row => carAsked(record.jobIdAt(row))

    delegate: DataRow {
        id: row

        required property string jobId
        required property string plate
        required property string color
        required property string body
        required property string stateWords
        required property string opened
        required property string promised
        required property string delivered
        required property string hours
        required property int marks
        required property bool disputed
        required property string hit

        table: cars
        name: {
            const said = [plate, color, body, stateWords, qsTr("opened %1").arg(opened),
                          promised === "" ? "" : qsTr("promised %1").arg(promised), hours,
                          qsTr("marks open: %1").arg(marks), hit];
            return said.filter(part => part !== "").join(qsTr(", "));
        }

        TapeLabel {
            x: cars.cellX(RecordViewModel.Car)
            width: Math.min(implicitWidth, cars.cellWidth(RecordViewModel.Car))
            anchors.verticalCenter: parent.verticalCenter
            lift: 32
            text: row.plate
            key: row.jobId
            pressable: false
            Accessible.ignored: true
        }
        Column {
            x: cars.cellX(RecordViewModel.Color)
            width: cars.cellWidth(RecordViewModel.Color)
            anchors.verticalCenter: parent.verticalCenter

            Words {
                width: parent.width
                text: row.color === "" ? row.body : row.color
                mute: true
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: row.hit !== "" ? row.hit : row.color === "" ? "" : row.body
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
        }
        Words {
            x: cars.cellX(RecordViewModel.State)
            width: cars.cellWidth(RecordViewModel.State)
            anchors.verticalCenter: parent.verticalCenter
            text: row.stateWords
            mute: true
            color: row.disputed ? Theme.oxide : Theme.ink
        }
        TimeText {
            x: cars.cellX(RecordViewModel.Opened)
            visible: cars.middling
            anchors.verticalCenter: parent.verticalCenter
            text: row.opened
            mute: true
        }
        TimeText {
            x: cars.cellX(RecordViewModel.Promised)
            anchors.verticalCenter: parent.verticalCenter
            visible: text !== "" && !cars.tight
            text: row.promised
            mute: true
        }
        TimeText {
            x: cars.cellX(RecordViewModel.Delivered)
            anchors.verticalCenter: parent.verticalCenter
            visible: text !== "" && cars.roomy
            text: row.delivered
            mute: true
        }
        Words {
            x: cars.cellX(RecordViewModel.Hours)
            width: cars.cellWidth(RecordViewModel.Hours)
            anchors.verticalCenter: parent.verticalCenter
            horizontalAlignment: Text.AlignRight
            text: row.hours
            mute: true
        }
        Words {
            x: cars.cellX(RecordViewModel.Marks)
            width: cars.cellWidth(RecordViewModel.Marks)
            anchors.verticalCenter: parent.verticalCenter
            visible: cars.roomy
            horizontalAlignment: Text.AlignRight
            text: row.marks
            mute: true
            bold: row.marks > 0
        }
    }
}
