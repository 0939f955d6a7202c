// PaneEntry: an entry in two lines: what, and who and when. The delegate of RecordPane: its fields come
// from the model's roles. must: something was passed over by it. Signal: clicked.
import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    required property string entry
    required property string words
    required property string who

    pressable: true
    quiet: true
    name: qsTr("%1, %2. Opens the entry.").arg(words).arg(who)

    Column {
        width: parent.width
        spacing: 2

        Row {
            width: parent.width
            spacing: 8

            StateShape {
                id: shape
                visible: card.must
                kind: ShapeKind.Must
                size: 20
            }
            Words {
                width: parent.width - (shape.visible ? shape.width + 8 : 0)
                text: card.words
                mute: true
            }
        }
        Words {
            width: parent.width
            text: card.who
            mute: true
            size: Theme.note
            color: Theme.pencil
        }
    }
}
