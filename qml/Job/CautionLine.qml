// CautionLine: one caution with its shape. words: it.
import QtQuick
import Jambline.Theme

Row {
    id: line

    property string words: ""

    visible: words !== ""
    spacing: 8
    Accessible.role: Accessible.StaticText
    Accessible.name: words

    StateShape {
        id: beware
        kind: ShapeKind.Must
        size: 20
        ground: Theme.paper
    }
    Words {
        width: line.width - beware.width - 8
        text: line.words
        mute: true
        bold: true
        size: Theme.note
    }
}
