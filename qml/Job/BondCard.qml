// BondCard: one bonded part: of glass from when it may be driven, else its handling and full strength.
// Signal: sumAsked.
import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    required property string title
    required property string facts
    required property string words
    required property int shape
    required property string note
    required property string strength
    required property bool hasSum

    signal sumAsked

    must: shape === ShapeKind.Must
    pressable: hasSum
    quiet: true
    name: Array.from([title, facts, words, note, strength]).filter(said => said !== "").join(". ")
        + (hasSum ? qsTr(". Opens the sum.") : "")
    onClicked: sumAsked()

    Column {
        width: parent.width
        spacing: 4

        Words {
            width: parent.width
            text: card.title
            mute: true
            bold: true
            size: Theme.lead
        }
        Words {
            width: parent.width
            text: card.facts
            mute: true
            size: Theme.note
            color: Theme.pencil
        }
        Row {
            width: parent.width
            visible: card.words !== ""
            spacing: 8

            StateShape {
                id: mark
                kind: card.shape
                key: card.title
                size: 24
            }
            Words {
                width: parent.width - mark.width - 8
                text: card.words
                mute: true
                bold: true
                color: card.shape === ShapeKind.Must ? Theme.oxide : Theme.ink
            }
        }
        Words {
            width: parent.width
            visible: text !== ""
            text: card.note
            mute: true
            size: Theme.note
            color: Theme.pencil
        }
        Words {
            width: parent.width
            visible: text !== ""
            text: card.strength
            mute: true
        }
    }
}
