// SprayCard: one spraying: who, where and through what, and what was passed over by name.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    required property string title
    required property string words
    required property var lines
    required property bool alarm
    required property int shape

    must: alarm
    name: qsTr("%1, %2").arg(title).arg(words)

    Item {
        width: parent.width
        height: Math.max(mark.height, said.height)

        StateShape {
            id: mark
            kind: card.shape
            key: card.title
            size: 24
        }
        Column {
            id: said
            x: mark.width + 10
            width: parent.width - x
            spacing: 4

            Words {
                width: parent.width
                text: card.title
                mute: true
                bold: true
            }
            Words {
                width: parent.width
                text: card.words
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
            Repeater {
                model: card.lines

                Words {
                    required property string modelData

                    width: parent?.width ?? 0
                    text: modelData
                    bold: true
                    size: Theme.note
                }
            }
        }
    }
}
