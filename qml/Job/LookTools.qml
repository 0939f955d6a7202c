// LookTools: what a finger draws: 1 circle, 2 arrow, 3 text. tool: the chosen one. Signal: chose(tool).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme

Column {
    id: tools

    property int tool: 1
    readonly property var said: [
        { name: qsTr("Circle"), how: qsTr("Drag from the middle outward.") },
        { name: qsTr("Arrow"), how: qsTr("Drag to where it points.") },
        { name: qsTr("Text"), how: qsTr("Tap where the words belong.") }
    ]

    signal chose(int tool)

    spacing: 6

    Words {
        width: parent.width
        text: tools.said[tools.tool - 1].how
        size: Theme.note
        color: Theme.pencil
    }
    ActRow {
        width: parent.width

        Repeater {
            model: 3

            PlainButton {
                required property int index

                objectName: "tool" + (index + 1)
                text: tools.said[index].name
                chosen: tools.tool === index + 1
                onClicked: tools.chose(index + 1)
            }
        }
    }
}
