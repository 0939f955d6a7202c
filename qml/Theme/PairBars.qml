// PairBars: rows of words with a solid bar, and behind it a hatched one where a row has two numbers.
// name is spoken before them. model: rows with `words`, `solid`, `hatched` (-1: none) and `barWords`.
// Bars begin at zero and end at `most`. Solid and hatched are told apart without colour, on paper too.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme

Column {
    id: bars

    required property string name
    property alias model: rows.model
    property real most: 1
    readonly property bool stacked: width < 520 * Theme.textScale
    readonly property real wordsWidth: stacked ? width : Math.min(width * 0.34, 240 * Theme.textScale)

    spacing: stacked ? 10 : 6
    Accessible.role: Accessible.List
    Accessible.name: name

    Repeater {
        id: rows

        Item {
            id: row

            required property string words
            required property real solid
            required property real hatched
            required property string barWords
            readonly property real barX: bars.stacked ? 0 : bars.wordsWidth + 12
            readonly property real room: Math.max(40, width - barX - number.width - 12)
            readonly property real barY: bars.stacked ? letters.height + 2 : (height - track.height) / 2

            objectName: "pairBar"
            width: bars.width
            height: bars.stacked ? letters.height + 2 + Math.max(track.height, number.height)
                                 : Math.max(30, letters.height, number.height)
            Accessible.role: Accessible.StaticText
            Accessible.name: qsTr("%1, %2").arg(words).arg(barWords)

            function lengthOf(value: real): real {
                return value <= 0 ? 0 : Math.max(2, room * value / Math.max(bars.most, 1e-9));
            }

            Words {
                id: letters
                width: bars.wordsWidth
                y: bars.stacked ? 0 : (parent.height - height) / 2
                text: row.words
                mute: true
                size: bars.stacked ? Theme.note : Theme.body
            }
            Item {
                id: track
                x: row.barX
                y: row.barY
                width: row.room
                height: 20

                Hatch {
                    width: row.lengthOf(row.hatched)
                    height: parent.height
                    visible: row.hatched > 0
                }
                Rectangle {
                    y: row.hatched > 0 ? 5 : 2
                    width: row.lengthOf(row.solid)
                    height: row.hatched > 0 ? 10 : 16
                    visible: row.solid > 0
                    color: Theme.ink
                }
                Rectangle {
                    width: 1
                    height: parent.height
                    color: Theme.edge
                }
            }
            Words {
                id: number
                x: row.barX + Math.max(row.lengthOf(row.solid), row.lengthOf(row.hatched)) + 8
                y: row.barY + (track.height - height) / 2
                width: natural
                text: row.barWords
                mute: true
                bold: true
                size: Theme.note
                wrapMode: Text.NoWrap
            }
        }
    }
}
