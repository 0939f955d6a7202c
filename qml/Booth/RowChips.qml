// RowChips: one of several things is chosen. rows: a model with the roles key and title; chosen: its
// key; title above. Signal: picked(key).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme

Column {
    id: chips

    property string title: ""
    property var rows: null
    property string chosen: ""
    property string wrong: ""
    property string objectKey: ""  // objectName of the chips, with their place

    signal picked(string key)

    spacing: 6

    Words {
        width: parent.width
        visible: text !== ""
        text: chips.title
        bold: true
        size: Theme.note
        color: Theme.pencil
    }
    Flow {
        width: parent.width
        spacing: Theme.gap

        Repeater {
            model: chips.rows

            PlainButton {
                required property int index
                required property string key
                required property string title

                objectName: chips.objectKey === "" ? "" : chips.objectKey + index
                width: Math.min(chips.width, Math.max(Theme.touch, implicitWidth))
                height: implicitHeight
                text: title
                name: chips.title === "" ? title : qsTr("%1: %2").arg(chips.title).arg(title)
                chosen: chips.chosen === key
                onClicked: chips.picked(key)
            }
        }
    }
    WrongLine {
        width: parent.width
        text: chips.wrong
    }
}
