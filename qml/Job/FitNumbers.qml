// FitNumbers: one line of numbers below the bars of a fit, with the sign of its bar. fit: the view model;
// title, role: which of the three; fill: of the sign; labels, column: the widths of the chart above.
// wide: what its words take.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Item {
    id: line

    required property FitViewModel fit
    property string title: ""
    property string role: ""
    property color fill: "transparent"
    property real labels: 0
    property real column: 0
    readonly property bool newest: role === (fit.measuredTitle !== "" ? "measuredWords" : "beforeWords")
    readonly property real wide: title === "" ? 0 : sign.width + 6 + name.natural

    visible: title !== ""
    width: parent ? parent.width : 0
    height: Math.max(name.height, 20)

    Rectangle {
        id: sign
        y: (parent.height - height) / 2
        width: 12
        height: 14
        color: line.fill
        border.width: 2
        border.color: line.role === "predictedWords" ? Theme.edge : Theme.ink
    }
    Words {
        id: name
        x: sign.width + 6
        width: line.labels - x - 4
        text: line.title
        size: Theme.note
        color: Theme.pencil
    }
    Repeater {
        model: line.fit.bars

        Words {
            required property var model
            required property int index
            readonly property bool off: line.newest && (model.off ?? false)

            x: line.labels + index * line.column
            width: line.column
            horizontalAlignment: Text.AlignHCenter
            text: model[line.role] ?? ""
            size: Theme.note
            bold: line.newest
            font.underline: off
            color: off ? Theme.oxide : Theme.ink
        }
    }
}
