// ConflictChip: a label that two people wrote without knowing of each other; either is one tap.
// title ("Promised"), shown (what stands), other, by, takeWords ("Take Jo's"). Signal: taken.
import QtQuick
import Jambline.Theme

PaperCard {
    id: chip

    required property string title
    required property string shown
    required property string other
    required property string by
    required property string takeWords

    signal taken

    disputed: true
    padding: 8

    Item {
        width: parent.width
        height: folded ? words.height + take.height + 8 : Math.max(words.height, take.height)

        readonly property bool folded: parent.width < take.implicitWidth + 180

        StateShape {
            id: mark
            y: (words.height - height) / 2
            kind: ShapeKind.Disputed
        }
        Words {
            id: words
            x: mark.width + 10
            y: parent.folded ? 0 : (parent.height - height) / 2
            width: parent.width - x - (parent.folded ? 0 : take.implicitWidth + 8)
            text: qsTr("%1 %2, %3 had %4").arg(chip.title).arg(chip.shown).arg(chip.by).arg(chip.other)
        }
        PlainButton {
            id: take
            x: parent.folded ? 0 : parent.width - width
            y: parent.folded ? words.height + 8 : (parent.height - height) / 2
            width: parent.folded ? parent.width : implicitWidth
            text: chip.takeWords
            name: qsTr("%1: %2 %3").arg(chip.takeWords).arg(chip.title).arg(chip.other)
            onClicked: chip.taken()
        }
    }
}
