// CureStep: one milestone on the line of a cure clock: its shape on the line, its name, what the clock
// says, and what the sheet says. first, last: the line begins or ends here.
import QtQuick
import Jambline.Theme

Item {
    id: step

    required property string title
    required property string words
    required property int shape
    required property string sheet
    required property string spoken
    property bool first: false
    property bool last: false
    readonly property real middle: mark.y + mark.height / 2

    height: said.height + 14
    Accessible.role: Accessible.StaticText
    Accessible.name: spoken

    Rectangle {
        x: 14 - width / 2
        y: step.first ? step.middle : 0
        width: 2
        height: (step.last ? step.middle : parent.height) - y
        color: Theme.edge
    }
    Rectangle {
        x: 2
        y: mark.y - 2
        width: 24
        height: mark.height + 4
        color: Theme.sheet
    }
    StateShape {
        id: mark
        x: 4
        y: 4
        kind: step.shape
        key: step.title
        size: 20
    }
    Column {
        id: said
        x: 38
        y: 2
        width: parent.width - x
        spacing: 1

        Grid {
            id: line
            width: parent.width
            columns: name.natural + says.natural + 8 <= width ? 2 : 1
            columnSpacing: 8

            Words {
                id: name
                width: Math.min(natural, line.width)
                text: step.title
                mute: true
                bold: true
            }
            Words {
                id: says
                width: Math.min(natural, line.width)
                text: step.words
                mute: true
                color: step.shape === ShapeKind.Must ? Theme.oxide : Theme.ink
            }
        }
        Words {
            width: parent.width
            text: step.sheet
            mute: true
            size: Theme.note
            color: Theme.pencil
        }
    }
}
