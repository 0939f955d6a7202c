// DirtChart: the answer in one sentence, the chart and the chosen car below it; the same numbers as
// a table instead, on a desk below. room: the height that is there (0: as it likes).
// Signal: carAsked(jobId).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: page

    required property DirtOverTimeViewModel dirt
    property bool desk: false
    property real room: 0
    property bool tabled: false
    readonly property real spare: room - said.height - foot.height - 3 * spacing - 2 * card.padding
    readonly property real chartHeight: room <= 0 ? Math.max(280, width * 0.8)
        : desk ? Math.max(230, Math.min(spare * 0.6, 340)) : Math.max(280, Math.min(spare, 480))

    signal carAsked(string jobId)

    spacing: Theme.gap

    Column {
        id: said
        width: parent.width
        spacing: 2

        Words {
            objectName: "dirtAnswer"
            width: parent.width
            text: page.dirt.answer
            bold: true
            size: Theme.title
            Accessible.role: Accessible.Heading
        }
        Words {
            objectName: "dirtRestsOn"
            width: parent.width
            text: page.dirt.restsOn
            size: Theme.note
            color: Theme.pencil
        }
    }
    PaperCard {
        id: card
        width: parent.width
        visible: !page.tabled || page.desk

        RateChart {
            id: chart
            objectName: "dirtChart"
            width: parent.width
            height: page.chartHeight
            name: page.dirt.chartName
            unitWords: page.dirt.unitWords
            chosenWords: page.dirt.chosenWords
            days: page.dirt.days
            rates: page.dirt.rates
            lows: page.dirt.lows
            highs: page.dirt.highs
            centers: page.dirt.centers
            looks: page.dirt.looks
            flagDays: page.dirt.flagDays
            flagWords: page.dirt.flagWords
            flagStrong: page.dirt.flagStrong
            chosen: page.dirt.chosen
            onPicked: point => page.dirt.choose(point)
            onOpened: page.carAsked(page.dirt.chosenJob)
        }
    }
    Item {
        id: inPlace
        width: parent.width
        height: table.height
        visible: page.tabled && !page.desk
    }
    Item {
        id: foot
        width: parent.width
        height: page.desk ? Math.max(chosen.height, acts.height) : acts.y + acts.height

        Words {
            id: chosen
            objectName: "dirtChosen"
            y: page.desk ? (parent.height - height) / 2 : 0
            width: page.desk ? acts.x - Theme.gap : parent.width
            text: page.dirt.chosen >= 0 ? qsTr("%1: %2").arg(page.dirt.chosenTitle).arg(page.dirt.chosenWords)
                : card.visible ? qsTr("A point is a car: press it. The band is what chance alone gives.") : ""
            color: page.dirt.chosen < 0 ? Theme.pencil : Theme.ink
            size: page.dirt.chosen < 0 ? Theme.note : Theme.body
        }
        ActRow {
            id: acts
            x: parent.width - width
            y: page.desk ? 0 : chosen.height + Theme.gap
            width: page.desk ? Math.min(260 * Theme.textScale, parent.width / 2) : parent.width
            height: implicitHeight

            PlainButton {
                objectName: "dirtCloser"
                visible: card.visible
                pressable: visible
                text: qsTr("Closer")
                onClicked: chart.zoomBy(2)
            }
            PlainButton {
                objectName: "dirtWhole"
                visible: card.visible && chart.near
                pressable: visible
                text: qsTr("All of it")
                onClicked: chart.whole()
            }
            PlainButton {
                objectName: "dirtAsTable"
                visible: !page.desk
                pressable: visible
                text: page.tabled ? qsTr("As a chart") : qsTr("As a table")
                onClicked: page.tabled = !page.tabled
            }
        }
    }
    Item {
        id: below
        width: parent.width
        height: table.height
        visible: page.desk

        DirtTable {
            id: table
            objectName: "dirtTable"
            parent: page.desk ? below : inPlace
            width: parent.width
            height: page.desk ? Math.max(140, page.spare - page.chartHeight) : page.chartHeight + 2 * card.padding
            dirt: page.dirt
            model: page.desk || page.tabled ? page.dirt.points : null
            onCarAsked: jobId => page.carAsked(jobId)
        }
    }
}
