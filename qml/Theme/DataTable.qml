// DataTable: columns, sort, pick, keyboard. columns: TableColumn list; model; delegate: a DataRow
// whose cells stand at cellX(i), cellWidth(i). The owner sorts: sortAsked(column) is sent, and it
// sets sortColumn and sortDown (spoken too). A narrow table scrolls sideways, it cuts no words.
// toTop() scrolls to the first row; atTop: it is in sight. chosen: the row; a press, Up, Down, J, K
// move it and send picked(row); Enter sends opened(row). sectionProperty, sectionDelegate: groups of rows. emptyText
// stands where rows would. name is spoken. Rows 52 (touch 72).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme

FocusScope {
    id: table

    required property string name
    property list<TableColumn> columns
    property alias model: rows.model
    property alias delegate: rows.delegate
    property alias chosen: rows.currentIndex
    property int sortColumn: -1
    property bool sortDown: true
    property bool letterKeys: true
    property string emptyText: ""
    property string sectionProperty: ""
    property Component sectionDelegate
    readonly property alias count: rows.count
    readonly property alias atTop: rows.atYBeginning
    readonly property real inset: 14
    readonly property real spacing: 12
    readonly property var shownColumns: Array.from(columns).filter(column => column.shown)
    readonly property real fixedWidth: shownColumns.reduce((sum, column) =>
        sum + (column.fill ? 0 : column.width * Theme.textScale), 0)
    readonly property real spare: spread - bare
    readonly property real bare: 2 * inset + (shownColumns.length - 1) * spacing + fixedWidth
    readonly property real spread: Math.max(width, bare + fillerCount * 90 * Theme.textScale)
    readonly property int fillerCount: shownColumns.filter(column => column.fill).length
    readonly property int fillers: Math.max(1, fillerCount)

    signal sortAsked(int column)
    signal picked(int row)
    signal opened(int row)

    function cellWidth(column: int): real {
        const spec = columns[column];
        return !spec.shown ? 0 : spec.fill ? spare / fillers : spec.width * Theme.textScale;
    }

    function cellX(column: int): real {
        let at = inset;
        for (let i = 0; i < column; ++i)
            at += columns[i].shown ? cellWidth(i) + spacing : 0;
        return at;
    }

    function toTop() {
        rows.positionViewAtBeginning();
    }

    function go(by: int) {
        if (rows.count > 0)
            pick(Math.max(0, Math.min(rows.count - 1, chosen + by)));
    }

    function pick(row: int) {
        chosen = row;
        picked(row);
    }

    implicitWidth: 640
    implicitHeight: head.height + rows.contentHeight
    Accessible.role: Accessible.Table
    Accessible.name: sortColumn < 0 ? name : sortDown
        ? qsTr("%1, sorted by %2, largest first").arg(name).arg(columns[sortColumn].title)
        : qsTr("%1, sorted by %2, smallest first").arg(name).arg(columns[sortColumn].title)

    Rectangle {
        anchors.fill: parent
        radius: Theme.corner
        color: Theme.sheet
        border.width: 1.2
        border.color: Theme.chalk
    }
    Item {
        id: head
        width: parent.width
        height: Math.max(Theme.touch, heads.height)
        clip: table.spread > table.width

        Item {
            id: heads
            x: -rows.contentX
            width: table.spread
            height: childrenRect.height

            Repeater {
                model: table.columns.length

                Pressable {
                    id: title

                    required property int index
                    readonly property TableColumn spec: table.columns[index]
                    readonly property bool sorted: table.sortColumn === index

                    objectName: "tableHead_" + index
                    x: table.cellX(index)
                    width: table.cellWidth(index)
                    height: Math.max(Theme.touch, letters.implicitHeight + 12)
                    visible: spec.shown
                    pressable: spec.sortable && spec.shown
                    name: !spec.sortable ? spec.title : sorted ? table.sortDown ? qsTr("%1, sorted, largest first").arg(spec.title)
                                                  : qsTr("%1, sorted, smallest first").arg(spec.title)
                                 : qsTr("Sort by %1").arg(spec.title)
                    Accessible.role: Accessible.ColumnHeader
                    onClicked: table.sortAsked(index)

                    Row {
                        anchors.verticalCenter: parent.verticalCenter
                        anchors.right: title.spec.alignRight ? parent.right : undefined
                        spacing: 4

                        Words {
                            id: letters
                            width: Math.min(natural, title.width - (arrow.visible ? 20 : 0))
                            text: title.spec.title
                            mute: true
                            bold: true
                            size: Theme.note
                            color: title.sorted ? Theme.ink : Theme.pencil
                        }
                        Icon {
                            id: arrow
                            anchors.verticalCenter: parent.verticalCenter
                            visible: title.sorted
                            size: 16
                            source: table.sortDown ? "sort-down" : "sort-up"
                        }
                    }
                }
            }
        }
        Rectangle {
            width: parent.width
            height: 1.2
            anchors.bottom: parent.bottom
            color: Theme.edge
        }
    }
    ListView {
        id: rows
        objectName: "tableRows"
        focus: true
        activeFocusOnTab: true
        y: head.height
        width: parent.width
        height: parent.height - y
        contentWidth: table.spread
        flickableDirection: Flickable.AutoFlickIfNeeded
        clip: true
        cacheBuffer: 0  // rows ahead of sight are made piece by piece and lie at the top until they are whole
        currentIndex: -1
        section.property: table.sectionProperty
        section.delegate: table.sectionDelegate
        onModelChanged: currentIndex = -1  // a new model picks its first row by itself
        keyNavigationEnabled: false
        boundsBehavior: Flickable.StopAtBounds
        highlightMoveDuration: 0
        Accessible.role: Accessible.List
        Accessible.name: table.name

        Keys.onPressed: event => {
            const letter = table.letterKeys && event.modifiers === Qt.NoModifier;
            if (event.key === Qt.Key_Down || (letter && event.key === Qt.Key_J))
                table.go(1);
            else if (event.key === Qt.Key_Up || (letter && event.key === Qt.Key_K))
                table.go(-1);
            else if (event.key === Qt.Key_Home)
                table.go(-rows.count);
            else if (event.key === Qt.Key_End)
                table.go(rows.count);
            else if ((event.key === Qt.Key_Return || event.key === Qt.Key_Enter) && table.chosen >= 0)
                table.opened(table.chosen);
            else
                return;
            event.accepted = true;
        }
    }
    FocusRing {
        shown: rows.activeFocus
    }
    Column {
        visible: rows.count === 0
        y: head.height
        width: parent.width
        padding: Theme.gutter
        spacing: 12

        Hatch {
            width: parent.width - 2 * Theme.gutter
            height: Theme.row
            radius: Theme.corner
        }
        Words {
            width: parent.width - 2 * Theme.gutter
            text: table.emptyText
            color: Theme.pencil
        }
    }
}
