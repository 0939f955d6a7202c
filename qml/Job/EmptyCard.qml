// EmptyCard: the hatched form of what will stand there, and one line why it is not there yet.
import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    property string words: ""

    dashed: true

    Item {
        width: parent.width
        height: Math.max(why.height, 56)

        Hatch {
            width: 56
            height: 56
            anchors.verticalCenter: parent.verticalCenter
        }
        Words {
            id: why
            x: 70
            width: parent.width - x
            anchors.verticalCenter: parent.verticalCenter
            text: card.words
            color: Theme.pencil
        }
    }
}
