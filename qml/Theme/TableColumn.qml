// TableColumn: one column of a DataTable. title; width (dp, before text scale); fill: takes what is
// left (in equal parts); sortable; alignRight for numbers; shown: false takes no room.
import QtQuick

QtObject {
    property string title: ""
    property real width: 100
    property bool fill: false
    property bool sortable: true
    property bool shown: true
    property bool alignRight: false
}
