// DirtRows: what stands beside the chart: what was done at the booths and what it changed, what the
// shapes mean, what people said threw the dirt, painters (for a manager), how it is worked out.
// dirt: the view model. Signals: sumAsked, boothsAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: rows

    required property DirtOverTimeViewModel dirt

    signal sumAsked
    signal boothsAsked

    spacing: Theme.gap
    bottomPadding: Theme.gutter

    component Title: Words {
        width: rows.width
        topPadding: Theme.gap
        bold: true
        size: Theme.lead
        Accessible.role: Accessible.Heading
    }
    component Note: Words {
        width: rows.width
        size: Theme.note
        color: Theme.pencil
    }

    Title { text: qsTr("What was done at the booths") }
    Note {
        visible: rows.dirt.eventCount > 0
        text: qsTr("Dirt after it against before it. That it changed then is no proof that it came from it.")
    }
    Repeater {
        model: rows.dirt.events

        DirtEventRow {
            width: rows.width
        }
    }
    PaperCard {
        objectName: "dirtNoEvents"
        width: parent.width
        visible: rows.dirt.eventCount === 0
        dashed: true

        Column {
            width: parent.width
            spacing: Theme.gap

            Hatch {
                width: parent.width
                height: 28
                radius: Theme.corner
            }
            Words {
                width: parent.width
                text: qsTr("Nothing was logged at a booth in this time. New filters, hoses or suits that are logged there stand here with what they changed.")
            }
            PlainButton {
                objectName: "dirtToBooths"
                width: Math.min(parent.width, Math.max(200, implicitWidth))
                height: implicitHeight
                text: qsTr("To the booths")
                onClicked: rows.boothsAsked()
            }
        }
    }
    Title {
        visible: looks.count > 0
        text: qsTr("What stands out")
    }
    Repeater {
        id: looks
        model: rows.dirt.lookRows

        Item {
            id: one

            required property int look
            required property string words
            required property string meaning

            width: rows.width
            height: lines.height
            Accessible.role: Accessible.StaticText
            Accessible.name: qsTr("%1. %2").arg(words).arg(meaning)

            LookPaper {
                y: 2
                width: 20
                height: 20
                look: one.look
                plain: Theme.pencil
                more: Theme.oxide
                less: Theme.green
                ground: Theme.paper
                Accessible.ignored: true
            }
            Column {
                id: lines
                x: 32
                width: parent.width - x

                Words {
                    width: parent.width
                    text: one.words
                    mute: true
                    bold: true
                }
                Words {
                    width: parent.width
                    text: one.meaning
                    mute: true
                    size: Theme.note
                    color: Theme.pencil
                }
            }
        }
    }
    Title {
        visible: rows.dirt.causeCount > 0
        text: qsTr("What people said threw it")
    }
    RankBars {
        objectName: "dirtCauses"
        width: parent.width
        visible: rows.dirt.causeCount > 0
        name: qsTr("What people said threw the dirt, most often first")
        model: rows.dirt.causes
        most: rows.dirt.mostCars
    }
    Title {
        visible: rows.dirt.byPainter
        text: qsTr("By painter")
    }
    Note {
        visible: rows.dirt.byPainter
        text: rows.dirt.paintersNote
    }
    Repeater {
        model: rows.dirt.byPainter ? rows.dirt.painters : null

        Item {
            id: painter

            required property string name
            required property string said
            required property bool ranked

            objectName: "dirtPainter"
            width: rows.width
            height: both.height
            Accessible.role: Accessible.StaticText
            Accessible.name: qsTr("%1: %2").arg(name).arg(said)

            Column {
                id: both
                width: parent.width

                Words {
                    width: parent.width
                    text: painter.name
                    mute: true
                    bold: painter.ranked
                }
                Words {
                    width: parent.width
                    text: painter.said
                    mute: true
                    size: Theme.note
                    color: Theme.pencil
                }
            }
        }
    }
    PlainButton {
        objectName: "dirtSumOpens"
        width: parent.width
        height: implicitHeight
        text: qsTr("How this is worked out")
        onClicked: rows.sumAsked()
    }
}
