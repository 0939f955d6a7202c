// SumLine: one sum in a list: what, what it is of, how long. title, second, hours, note, spoken.
import QtQuick
import Jambline.Theme

Item {
    id: line

    property string title: ""
    property string second: ""
    property string hours: ""
    property string note: ""
    readonly property bool folded: what.natural + length.width + 12 > width

    height: below.y + below.height + 10
    Accessible.role: Accessible.Row
    Accessible.name: Array.from([title, second, hours, note]).filter(words => words !== "").join(", ")

    Rectangle {
        width: parent.width
        height: 1
        color: Theme.chalk
    }
    Words {
        id: what
        y: 8
        width: line.folded ? parent.width : parent.width - length.width - 12
        text: line.title
        mute: true
    }
    TimeText {
        id: length
        y: line.folded ? what.y + what.height + 2 : 8
        x: line.folded ? 0 : parent.width - width
        visible: line.hours !== ""
        width: visible ? implicitWidth : 0
        height: visible ? implicitHeight : 0
        text: line.hours
        mute: true
        bold: true
    }
    Column {
        id: below
        y: Math.max(what.y + what.height, length.y + length.height) + 2
        width: parent.width
        spacing: 2

        Words {
            width: parent.width
            visible: text !== ""
            text: line.second
            mute: true
            size: Theme.note
            color: Theme.pencil
        }
        Words {
            width: parent.width
            visible: text !== ""
            text: line.note
            mute: true
            bold: true
            size: Theme.note
            color: Theme.ochreInk
        }
    }
}
