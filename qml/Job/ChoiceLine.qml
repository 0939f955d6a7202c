// ChoiceLine: one of a few words, with its title above. words; chosen: its place, -1 none; key: the
// objectName of the buttons, with their place. Signal: picked(row).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme

Column {
    id: line

    property string title: ""
    property var words: []
    property int chosen: -1
    property string key: ""

    signal picked(int row)

    width: parent ? parent.width : 0
    spacing: 6

    Words {
        width: parent.width
        visible: text !== ""
        text: line.title
        bold: true
        size: Theme.note
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }
    Flow {
        width: parent.width
        spacing: Theme.gap

        Repeater {
            model: line.words

            PlainButton {
                required property int index
                required property string modelData

                objectName: line.key === "" ? "" : line.key + index
                width: Math.min(line.width, Math.max(Theme.touch, implicitWidth))
                height: implicitHeight
                text: modelData
                name: qsTr("%1, %2").arg(line.title).arg(modelData)
                chosen: line.chosen === index
                onClicked: line.picked(index)
            }
        }
    }
}
