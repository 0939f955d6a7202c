// SignRow: one sign on its line from chance to cause. The row shows it on the map; chosen it says
// what it points to; the arrow opens its numbers. Signals: showAsked, sumAsked.
import QtQuick
import Jambline.Theme
import Jambline.Screens

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
        width: row.width
        height: implicitHeight
        pressable: true
        chosen: row.chosen
        name: qsTr("%1, %2, %3. Shows it on the map.").arg(row.title).arg(row.note).arg(row.points ? qsTr("%1 by chance").arg(row.chance) : row.chance)
        onClicked: row.showAsked()

        Item {
            id: inner

            readonly property real room: width - open.width - 4
            readonly property bool folded: head.natural + said.natural + 12 > room || line.width + below.natural + 12 > room

            width: parent.width
            height: Math.max(told.visible ? told.y + told.height : line.y + line.height, open.height)

            Words {
                id: head
                width: inner.folded ? inner.room : Math.min(natural, inner.room)
                text: row.title
                mute: true
                bold: true
            }
            Words {
                id: below
                y: head.height + 2
                width: inner.folded ? inner.room : Math.min(natural, inner.room)
                text: row.note
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
            LimitLine {
                id: line
                x: inner.folded ? 0 : inner.room - width
                y: inner.folded ? below.y + below.height + 6 : below.y - 2
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
                x: inner.folded ? line.width + 12 : inner.room - width
                y: inner.folded ? line.y : 0
                width: Math.min(natural, inner.room)
                text: row.chance
                mute: true
                bold: row.points
                wrapMode: Text.NoWrap
                color: row.points ? Theme.ink : Theme.pencil
            }
            Words {
                id: told
                y: line.y + line.height + 6
                width: inner.room
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
        anchors.verticalCenter: parent.verticalCenter
        width: Math.min(56, Theme.touch)
        height: Math.min(card.height, Math.max(Theme.touch, 44))
        bare: true
        iconName: "forward"
        name: qsTr("The numbers of: %1").arg(row.title)
        onClicked: row.sumAsked()
    }
}
