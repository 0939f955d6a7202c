// WrongLine: what is wrong with a choice above it, with its shape; "" takes no room.
import QtQuick
import Jambline.Theme

Row {
    id: line

    property string text: ""

    visible: text !== ""
    spacing: 8

    StateShape {
        id: must
        kind: ShapeKind.Must
        size: 20
        ground: Theme.paper
    }
    Words {
        width: line.width - must.width - 8
        text: line.text
        bold: true
        size: Theme.note
        color: Theme.oxide
    }
}
