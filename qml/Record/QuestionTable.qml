// QuestionTable: the rows of the answer as a table, for a desk. ask: the view model. A row that is
// pressed twice, or Enter, opens its cars: rowAsked(key). model: its rows.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

DataTable {
    id: answers

    required property QuestionViewModel ask
    readonly property real number: Math.max(52, Math.min(104, ((width - 76) / Theme.textScale - 110) / 4))  // dp at 100 %
    property string key: ""

    signal rowAsked(string key)

    function headOf(at: int): string {
        return ask.heads.length > at ? ask.heads[at] : "";
    }

    name: qsTr("%1, %2").arg(ask.title).arg(ask.timeTitle)
    columns: [
        TableColumn { title: answers.ask.view < answers.ask.views.length ? answers.ask.views[answers.ask.view] : qsTr("Test"); fill: true; sortable: false },
        TableColumn { title: answers.headOf(0); width: answers.number; sortable: false; alignRight: true; shown: title !== "" },
        TableColumn { title: answers.headOf(1); width: answers.number; sortable: false; alignRight: true; shown: title !== "" },
        TableColumn { title: answers.headOf(2); width: answers.number; sortable: false; alignRight: true; shown: title !== "" },
        TableColumn { title: answers.headOf(3); width: answers.number; sortable: false; alignRight: true; shown: title !== "" }
    ]
    onOpened: rowAsked(key)

    delegate: DataRow {
        id: row

        required property string key
        required property string title
        required property string note
        required property bool alarm
        required property string one
        required property string two
        required property string three
        required property string four
        required property string spoken

        component Cell: Words {
            property int column: 0

            x: answers.cellX(column)
            visible: answers.columns[column].shown
            width: answers.cellWidth(column)
            anchors.verticalCenter: parent.verticalCenter
            horizontalAlignment: Text.AlignRight
            mute: true
        }

        table: answers
        objectName: "questionRow" + index
        name: row.spoken
        onPickedChanged: {
            if (picked)
                answers.key = key;
        }

        Column {
            x: answers.cellX(0)
            width: answers.cellWidth(0)
            anchors.verticalCenter: parent.verticalCenter

            Words {
                width: parent.width
                text: row.title
                mute: true
                bold: true
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: row.note
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
        }
        Cell { column: 1; text: row.one; bold: row.alarm; color: row.alarm ? Theme.oxide : Theme.ink }
        Cell { column: 2; text: row.two }
        Cell { column: 3; text: row.three }
        Cell { column: 4; text: row.four }
    }
}
