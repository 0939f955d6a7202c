// SignRow: one sign on its line from chance to cause. The row shows it on the map; chosen it says
// what it points to; the arrow beside it opens its numbers. Signals: showAsked, sumAsked.
import QtQuick
import Jambline.Theme

Item {
    id: row

    required property string title
    required property string note
    required property string chance
    required property real position
    required property bool points
    required property string pointsTo
    required property string lookAt
    required property bool chosen

    signal showAsked
    signal sumAsked

    implicitHeight: card.implicitHeight
    height: implicitHeight

    PaperCard {
        id: card
        objectName: "signShow"
        width: row.width - open.width - Theme.gap
        height: implicitHeight
        pressable: true
        chosen: row.chosen
        name: qsTr("%1, %2, %3. Shows it on the map.").arg(row.title).arg(row.note).arg(row.points ? qsTr("%1 by chance").arg(row.chance) : row.chance)
        onClicked: row.showAsked()

        Item {
            id: inner

            readonly property bool folded: Math.max(head.natural, below.natural) + 12 + line.width > width

            width: parent.width
            height: told.visible ? told.y + told.height : Math.max(line.y + line.height, below.y + below.height)

            Words {
                id: head
                width: inner.folded ? parent.width : Math.min(natural, parent.width)
                text: row.title
                mute: true
                bold: true
            }
            Words {
                id: below
                y: head.height + 2
                width: inner.folded ? parent.width : Math.min(natural, parent.width)
                text: row.note
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
            LimitLine {
                id: line
                x: inner.folded ? 0 : parent.width - width
                y: inner.folded ? below.y + below.height + 6 : said.height
                width: implicitWidth
                height: implicitHeight
                name: qsTr("from chance to cause: %1").arg(row.chance)
                value: row.position
                limit: 0.5
                lowWords: qsTr("chance")
                highWords: qsTr("cause")
                out: row.points
                tone: Theme.pencil
            }
            Words {
                id: said
                x: inner.folded ? line.width + 14 : parent.width - width
                y: inner.folded ? line.y : 0
                width: Math.min(natural, inner.folded ? parent.width - x : parent.width)
                text: row.chance
                mute: true
                bold: row.points
                color: row.points ? Theme.ink : Theme.pencil
            }
            Words {
                id: told
                y: Math.max(line.y + line.height, below.y + below.height) + 6
                width: parent.width
                visible: row.chosen && row.points
                text: qsTr("Points to %1. Look at %2.").arg(row.pointsTo).arg(row.lookAt)
                mute: true
                size: Theme.note
            }
        }
    }
    PlainButton {
        id: open
        objectName: "signSum"
        anchors.right: parent.right
        width: Theme.touch
        height: card.height
        iconName: "forward"
        name: qsTr("The numbers of: %1").arg(row.title)
        onClicked: row.sumAsked()
    }
}
