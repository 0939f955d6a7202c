// OfferRows: the parts that are offered to whoever taps, the oldest first; a press leads to taking it.
// hand: the view model; most: so many at a time. Signal: partAsked(key).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: rows

    property HandOffViewModel hand: null
    property int most: 2

    signal partAsked(string key)

    spacing: 8

    Repeater {
        model: rows.hand?.offers ?? null

        PaperCard {
            id: card

            required property int index
            required property string key
            required property string title
            required property string words

            objectName: "offer" + index
            width: rows.width
            visible: index < rows.most
            pressable: visible
            side: true
            footColor: Theme.blue
            name: qsTr("%1, %2. Opens the parts.").arg(title).arg(words)
            onClicked: rows.partAsked(key)

            Item {
                width: parent.width
                height: Math.max(mark.height, said.height)

                StateShape {
                    id: mark
                    x: 6
                    anchors.verticalCenter: parent.verticalCenter
                    kind: ShapeKind.Waits
                    key: card.key
                    size: 26
                }
                Column {
                    id: said
                    x: mark.x + mark.width + 12
                    width: parent.width - x - on.width - 8
                    anchors.verticalCenter: parent.verticalCenter
                    spacing: 2

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
                }
                Icon {
                    id: on
                    anchors.right: parent.right
                    anchors.verticalCenter: parent.verticalCenter
                    source: "forward"
                }
            }
        }
    }
    Words {
        width: parent.width
        visible: text !== ""
        text: (rows.hand?.offerCount ?? 0) > rows.most ? rows.hand.moreWords(rows.most) : ""
        size: Theme.note
        color: Theme.pencil
    }
}
