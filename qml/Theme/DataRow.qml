// DataRow: one row of a DataTable; its delegate. table: the table (must be set); index comes from
// the model. marked: it is what stands open beside the table. name is spoken. Put cells inside at
// table.cellX(i), width table.cellWidth(i); they are centered by setting anchors.verticalCenter:
// parent.verticalCenter. A press picks, a second opens.
import QtQuick
import Jambline.Theme

Pressable {
    id: row

    required property DataTable table
    required property int index
    default property alias cells: holder.data
    readonly property real tallest: Array.from(holder.children).reduce((most, cell) => Math.max(most, cell.height), 0)
    property bool marked: false
    readonly property bool picked: table.chosen === index

    width: table.spread
    implicitWidth: 640
    implicitHeight: Math.max(Theme.row, tallest + 16)
    height: implicitHeight
    activeFocusOnTab: false
    Accessible.role: Accessible.Row
    Accessible.selected: picked || marked
    onClicked: {
        if (picked)
            table.opened(index);
        else
            table.pick(index);
    }

    Rectangle {
        x: 1
        width: parent.width - 2
        height: parent.height
        visible: row.picked || row.pressed
        color: Theme.paper
    }
    Rectangle {
        visible: row.picked || row.marked
        width: Theme.foot
        height: parent.height
        radius: 1
        color: Theme.ink
    }
    Rectangle {
        x: 12
        width: parent.width - 24
        height: 1
        anchors.bottom: parent.bottom
        color: Theme.chalk
    }
    Item {
        id: holder
        anchors.fill: parent
    }
}
