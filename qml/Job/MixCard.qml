// MixCard: one mix: product, when and by whom, batch, pot life, and the coats that it went into.
// A press changes it. Signals: clicked; coatsAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    required property string title
    required property string words
    required property string potWords
    required property int potShape
    required property var coats
    required property bool asksCoats

    signal coatsAsked

    pressable: true
    name: qsTr("%1, %2, %3. Changes the mix.").arg(title).arg(words).arg(potWords)

    Column {
        width: parent.width
        spacing: 6

        Words {
            width: parent.width
            text: card.title
            mute: true
            bold: true
            size: Theme.lead
        }
        Words {
            width: parent.width
            text: card.words
            mute: true
            size: Theme.note
            color: Theme.pencil
        }
        Item {
            width: parent.width
            height: Math.max(mark.height, pot.height)

            StateShape {
                id: mark
                anchors.verticalCenter: parent.verticalCenter
                kind: card.potShape
                key: card.title
                size: 20
            }
            Words {
                id: pot
                x: mark.width > 0 ? mark.width + 8 : 0
                width: parent.width - x
                anchors.verticalCenter: parent.verticalCenter
                text: card.potWords
                mute: true
                color: card.potShape === ShapeKind.Must ? Theme.oxide : Theme.ink
            }
        }
        Repeater {
            model: card.coats

            Words {
                required property string modelData

                width: parent?.width ?? 0
                text: modelData
                size: Theme.note
            }
        }
        PlainButton {
            objectName: "mixCoats"
            width: parent.width
            height: implicitHeight
            visible: card.asksCoats
            pressable: visible
            text: qsTr("Log its coats")
            onClicked: card.coatsAsked()
        }
    }
}
