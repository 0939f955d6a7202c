// ChoiceFlow: one answer out of a few, as buttons that wrap. model: rows with key, title, chosen.
// question is spoken before each. Signal: picked(key).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme

Flow {
    id: flow

    property alias model: rows.model
    property string question: ""
    property real least: 112

    signal picked(string key)

    spacing: Theme.gap

    Repeater {
        id: rows

        PlainButton {
            id: one

            required property string key
            required property string title
            required chosen

            width: Math.min(flow.width, Math.max(flow.least, implicitWidth))
            text: title
            name: qsTr("%1, %2").arg(flow.question).arg(title)
            onClicked: flow.picked(key)
        }
    }
}
