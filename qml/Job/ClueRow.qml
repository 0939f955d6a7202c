// ClueRow: what particles look like or where they lie in the film, and what that points to.
import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    required property string title
    required property string note
    required property string pointsTo
    required property string lookAt

    name: qsTr("%1, %2. Points to %3. Look at %4.").arg(title).arg(note).arg(pointsTo).arg(lookAt)

    Column {
        width: parent.width
        spacing: 2

        Words {
            width: parent.width
            text: card.title
            mute: true
            bold: true
        }
        Words {
            width: parent.width
            text: card.note
            mute: true
            size: Theme.note
            color: Theme.pencil
        }
        Words {
            width: parent.width
            text: qsTr("Points to %1. Look at %2.").arg(card.pointsTo).arg(card.lookAt)
            mute: true
        }
    }
}
