// DoNotDrive: glass was set and its time is not over: said on every screen of the car, with no way
// round. words: "Do not drive until 15:40"; keys: who keeps them.
import QtQuick
import Jambline.Theme

Item {
    id: strip

    required property string words
    property string keys: ""

    height: said.height
    Accessible.role: Accessible.AlertMessage
    Accessible.name: qsTr("%1. %2").arg(words).arg(keys)

    StateShape {
        id: mark
        y: (first.height - height) / 2
        kind: ShapeKind.Must
        ground: Theme.paper
        size: 20
    }
    Grid {
        id: said
        x: mark.width + 8
        width: parent.width - x
        columns: first.natural + second.natural + 8 <= width ? 2 : 1
        columnSpacing: 8
        verticalItemAlignment: Grid.AlignVCenter

        Words {
            id: first
            width: Math.min(natural, said.width)
            text: strip.words
            mute: true
            bold: true
            color: Theme.oxide
        }
        Words {
            id: second
            width: Math.min(natural, said.width)
            text: strip.keys
            mute: true
            size: Theme.note
            color: Theme.pencil
        }
    }
}
