// RankBars: ranked bars, largest first, with their words and counts. name is spoken before them.
// model: rows with `words`, `count` and `countWords`, and `quiet` for what is no answer (hatched).
// Bars begin at zero and end at the largest count.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme

Column {
    id: bars

    required property string name
    property alias model: rows.model
    property int most: 1
    readonly property real wordsWidth: Math.min(width * 0.45, 220 * Theme.textScale)

    spacing: 4
    Accessible.role: Accessible.List
    Accessible.name: name

    Repeater {
        id: rows

        Item {
            id: row

            required property string words
            required property int count
            required property string countWords
            required property bool quiet
            readonly property real room: width - bars.wordsWidth - number.width - 24

            objectName: "rankBar"
            width: bars.width
            height: Math.max(32, letters.height + 8)
            Accessible.role: Accessible.StaticText
            Accessible.name: qsTr("%1, %2").arg(words).arg(countWords)

            Words {
                id: letters
                width: bars.wordsWidth
                anchors.verticalCenter: parent.verticalCenter
                text: row.words
                mute: true
                color: row.quiet ? Theme.pencil : Theme.ink
            }
            Rectangle {
                id: bar
                x: bars.wordsWidth + 12
                width: Math.max(2, row.room * row.count / Math.max(1, bars.most))
                height: 18
                anchors.verticalCenter: parent.verticalCenter
                visible: !row.quiet
                color: Theme.ink
            }
            Hatch {
                x: bar.x
                width: bar.width
                height: bar.height
                anchors.verticalCenter: parent.verticalCenter
                visible: row.quiet
            }
            Words {
                id: number
                x: bar.x + bar.width + 8
                width: natural
                anchors.verticalCenter: parent.verticalCenter
                text: row.countWords
                mute: true
                bold: true
                wrapMode: Text.NoWrap
            }
        }
    }
}
