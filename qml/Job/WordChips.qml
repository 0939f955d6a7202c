// WordChips: one of several words is chosen. words: all of them; chosen: its place, -1 none; title
// above; key: objectName of the chips, with their place. Signal: picked(index).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme

Column {
    id: chips

    property string title: ""
    property var words: []
    property int chosen: -1
    property string key: ""

    signal picked(int index)

    spacing: 6

    Words {
        width: parent.width
        visible: text !== ""
        text: chips.title
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }
    Flow {
        width: parent.width
        spacing: Theme.gap

        Repeater {
            model: chips.words

            PlainButton {
                required property int index
                required property string modelData

                objectName: chips.key === "" ? "" : chips.key + index
                width: Math.min(chips.width, Math.max(Theme.touch, implicitWidth))
                height: implicitHeight
                text: modelData
                name: chips.title === "" ? modelData : qsTr("%1: %2").arg(chips.title).arg(modelData)
                chosen: chips.chosen === index
                onClicked: chips.picked(index)
            }
        }
    }
}
