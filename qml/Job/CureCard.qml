// CureCard: one cure clock: what was sprayed where, its surface temperature, its milestones on a line,
// and the thumbnail check where the clock asks for it. charted: with the line of what was read.
// Signals: thumbnailSaid(firm), sumAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    required property string title
    required property string product
    required property string panels
    required property string surface
    required property string note
    required property int noteShape
    required property bool asksThumbnail
    required property string thumbnail
    required property var steps
    required property bool hasSum
    required property var line
    required property real limit
    required property string lineWords
    property bool charted: false

    signal thumbnailSaid(bool firm)
    signal sumAsked

    Column {
        width: parent.width
        spacing: 8

        Words {
            width: parent.width
            text: card.title
            bold: true
            size: Theme.lead
            Accessible.role: Accessible.Heading
        }
        Words {
            width: parent.width
            text: qsTr("%1 on %2").arg(card.product).arg(card.panels)
            size: Theme.note
            color: Theme.pencil
        }
        FigureBlock {
            objectName: "cureSurface"
            width: parent.width
            label: qsTr("Surface")
            value: card.surface
            note: card.thumbnail
            grade: card.hasSum ? FigureBlock.Plain : FigureBlock.Missing
            pressable: card.hasSum
            onClicked: card.sumAsked()
        }
        SurfaceLineItem {
            width: parent.width
            height: 72
            visible: card.charted && card.lineWords !== ""
            points: card.line
            limit: card.limit
            ink: Theme.ink
            edge: Theme.edge
            Accessible.role: Accessible.Graphic
            Accessible.name: card.lineWords
        }
        Words {
            width: parent.width
            visible: card.charted && text !== ""
            text: card.lineWords
            mute: true
            size: Theme.note
            color: Theme.pencil
        }
        Row {
            width: parent.width
            visible: card.note !== ""
            spacing: 8

            StateShape {
                id: mark
                kind: card.noteShape
                key: card.note
                size: 22
            }
            Words {
                width: parent.width - mark.width - 8
                text: card.note
                bold: true
            }
        }
        Column {
            width: parent.width

            Repeater {
                id: marks
                model: card.steps

                CureStep {
                    required property int index

                    width: parent ? parent.width : 0
                    first: index === 0
                    last: index === marks.count - 1
                }
            }
        }
        Column {
            width: parent.width
            visible: card.asksThumbnail
            spacing: 6

            Words {
                width: parent.width
                text: qsTr("Thumbnail in a hidden place, once the panel is cool")
                size: Theme.note
                color: Theme.pencil
            }
            ActRow {
                width: parent.width

                PlainButton {
                    objectName: "thumbFirm"
                    text: qsTr("Firm")
                    name: qsTr("%1: the thumbnail leaves no print").arg(card.title)
                    pressable: card.asksThumbnail
                    onClicked: card.thumbnailSaid(true)
                }
                PlainButton {
                    objectName: "thumbNotYet"
                    text: qsTr("Not yet")
                    name: qsTr("%1: the thumbnail leaves a print, not yet").arg(card.title)
                    pressable: card.asksThumbnail
                    onClicked: card.thumbnailSaid(false)
                }
            }
        }
    }
}
