// SpanCard: one span of a clock: what, on which car, from when to when, how long; what was said
// afterwards of its times, both of them; what is to be known. Press: its times. title, car, when, hours,
// said, note, shape, spoken.
import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    required property string title
    property string car: ""
    required property string when
    required property string hours
    required property string said
    required property string note
    required property int shape
    required property string spoken

    pressable: true
    name: spoken

    Item {
        id: room
        width: parent.width
        height: lines.height

        readonly property bool folded: what.natural + length.width + 12 > lines.width

        StateShape {
            id: mark
            y: 2
            kind: card.shape
            size: 20
        }
        Column {
            id: lines
            x: mark.kind === ShapeKind.None ? 0 : mark.width + 10
            width: parent.width - x
            spacing: 2

            Item {
                width: parent.width
                height: length.y + Math.max(length.height, room.folded ? 0 : what.height)

                Words {
                    id: what
                    width: room.folded ? parent.width : parent.width - length.width - 12
                    text: card.title
                    mute: true
                    bold: true
                }
                TimeText {
                    id: length
                    y: room.folded ? what.height + 2 : 0
                    x: room.folded ? 0 : parent.width - width
                    text: card.hours
                    mute: true
                    bold: true
                }
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: card.car
                mute: true
            }
            Words {
                width: parent.width
                text: card.when
                mute: true
                color: Theme.pencil
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: card.said
                mute: true
                size: Theme.note
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: card.note
                mute: true
                bold: true
                size: Theme.note
                color: Theme.ochreInk
            }
        }
    }
}
