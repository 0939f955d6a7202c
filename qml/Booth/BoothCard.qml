// BoothCard: one booth on its tape: what stands in it now, its filter, smoke test and air, and the
// five things that are done to it, each with how long ago it was last logged. Where there is little
// room its numbers are three lines until they are asked for.
// empty: the form of a booth that is not there yet, hatched, nothing to press.
// Signals: opened (the tape), nowAsked (what stands in it), readAsked(reading), sumAsked(figure),
// asked(event), filtersOut (the old filters have left the building).
pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    required property BoothViewModel booth
    required property string title
    required property string kindWords
    required property var ages
    required property bool filtersStillIn
    property int stateShape: ShapeKind.None
    property string stateWords: ""
    property string stateLine: ""
    property string countdown: ""
    property bool live: false
    property bool sprayed: true
    property string filter: ""
    property string filterNote: ""
    property bool filterMissing: true
    property bool filterOut: false
    property bool filterSum: false
    property string smoke: ""
    property string smokeNote: ""
    property bool smokeMissing: true
    property bool smokeOut: false
    property bool smokeSum: false
    property string air: ""
    property string airNote: ""
    property bool airMissing: true
    property bool airOut: false
    property bool airSum: false
    property bool empty: false
    property bool asked_: false  // for the numbers
    readonly property bool numbers: !empty && (asked_ || width >= 500 * Theme.textScale)

    signal opened
    signal nowAsked
    signal readAsked(int reading)
    signal sumAsked(int figure)
    signal asked(int event)
    signal filtersOut

    dashed: empty
    must: filtersStillIn || (live && stateShape === ShapeKind.Must)
    name: qsTr("%1, %2").arg(title).arg(kindWords)

    Cautions {
        id: cautions
    }

    Column {
        id: inner
        width: parent.width
        spacing: 12

        TapeLabel {
            objectName: card.empty ? "" : "boothTape"
            width: Math.min(parent.width, Math.max(200, implicitWidth))
            height: Math.max(Theme.touch, implicitHeight)
            text: card.title
            secondLine: card.kindWords
            pressable: !card.empty && !card.booth.readOnly
            onClicked: card.opened()
        }
        BoothStateRow {
            objectName: card.empty ? "" : "boothState"
            width: parent.width
            visible: !card.empty
            shape: card.stateShape
            words: card.stateWords
            line: card.stateLine
            countdown: card.countdown
            pressable: visible && card.live
            name: qsTr("%1: %2, %3 %4").arg(card.title).arg(card.stateWords).arg(card.stateLine).arg(card.countdown)
            onClicked: card.nowAsked()
        }
        Column {
            width: parent.width
            visible: card.filtersStillIn
            spacing: Theme.gap

            Row {
                width: parent.width
                spacing: 10

                StateShape {
                    id: must
                    kind: ShapeKind.Must
                    size: 26
                }
                Words {
                    width: parent.width - must.width - 10
                    text: cautions.oldFiltersIn
                }
            }
            PlainButton {
                objectName: card.empty ? "" : "filtersOut"
                width: parent.width
                height: implicitHeight
                visible: card.filtersStillIn && !card.booth.readOnly
                pressable: visible
                text: qsTr("The old filters are out now")
                onClicked: card.filtersOut()
            }
        }
        PaperCard {
            objectName: card.empty ? "" : "boothNumbers"
            width: parent.width
            visible: !card.empty && !card.numbers
            pressable: visible
            name: qsTr("Numbers of %1. Opens them.").arg(card.title)
            onClicked: card.asked_ = true

            Column {
                id: lines
                width: parent.width
                spacing: 4

                component Line: Item {
                    property string words: ""
                    property bool out: false

                    width: lines.width
                    height: visible ? Math.max(said.height, warns.visible ? warns.height : 0) : 0

                    StateShape {
                        id: warns
                        visible: parent.out
                        kind: ShapeKind.Must
                        size: 18
                    }
                    Words {
                        id: said
                        x: warns.visible ? 26 : 0
                        width: parent.width - x
                        text: parent.words
                        mute: true
                        bold: parent.out
                        size: Theme.note
                    }
                }

                Line {
                    visible: card.sprayed
                    words: qsTr("Smoke test %1, %2").arg(card.smoke).arg(card.smokeNote)
                    out: card.smokeOut || card.smokeMissing
                }
                Line {
                    words: card.filterNote === "" ? qsTr("Filter %1").arg(card.filter) : qsTr("Filter %1, %2").arg(card.filter).arg(card.filterNote)
                    out: card.filterOut
                }
                Line {
                    words: card.airNote === "" ? qsTr("Air %1").arg(card.air) : qsTr("Air %1, %2").arg(card.air).arg(card.airNote)
                    out: card.airOut
                }
            }
        }
        GridLayout {
            id: figures

            width: parent.width
            visible: card.numbers
            columns: width < 460 * Theme.textScale ? 1 : 3
            columnSpacing: Theme.gap
            rowSpacing: Theme.gap

            component Figure: FigureBlock {
                property int reading: 0
                property int figure: 0
                property bool missing: false
                property bool opens: false

                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.preferredWidth: 100
                grade: missing ? FigureBlock.Missing : FigureBlock.Plain
                pressable: visible && (opens || !card.booth.readOnly)
                name: opens ? qsTr("%1, %2, %3. Opens the sum.").arg(label).arg(value).arg(note)
                            : qsTr("%1, %2, %3. Logs a reading.").arg(label).arg(value).arg(note)
                onClicked: opens ? card.sumAsked(figure) : card.readAsked(reading)
            }

            Figure {
                objectName: card.empty ? "" : "boothSmoke"
                visible: card.sprayed
                reading: 3
                figure: BoothViewModel.Smoke
                label: qsTr("Smoke test")
                value: card.smoke
                note: card.smokeNote
                missing: card.smokeMissing
                out: card.smokeOut
                opens: card.smokeSum
            }
            Figure {
                objectName: card.empty ? "" : "boothFilter"
                reading: 1
                figure: BoothViewModel.Filter
                label: qsTr("Filter pressure")
                value: card.filter
                note: card.filterNote
                missing: card.filterMissing
                out: card.filterOut
                opens: card.filterSum
            }
            Figure {
                objectName: card.empty ? "" : "boothAir"
                reading: 0
                figure: BoothViewModel.Air
                label: qsTr("Air velocity")
                value: card.air
                note: card.airNote
                missing: card.airMissing
                out: card.airOut
                opens: card.airSum
            }
        }
        PlainButton {
            objectName: card.empty ? "" : "boothRead"
            width: parent.width
            height: implicitHeight
            visible: card.numbers && !card.booth.readOnly
            pressable: visible
            beside: true
            iconName: "gauge"
            text: qsTr("Log a reading")
            name: qsTr("Log a reading of %1").arg(card.title)
            onClicked: card.readAsked(1)
        }
        GridLayout {
            id: grid

            readonly property real least: 104 * Theme.textScale

            width: parent.width
            columns: Math.max(1, Math.min(card.booth.eventCount, Math.floor((width + Theme.gap) / (least + Theme.gap))))
            columnSpacing: Theme.gap
            rowSpacing: Theme.gap

            Repeater {
                model: card.booth.eventCount

                Item {
                    id: cell

                    required property int index

                    implicitHeight: card.empty ? 84 : button.implicitHeight
                    Layout.preferredWidth: (grid.width - (grid.columns - 1) * grid.columnSpacing) / grid.columns
                    Layout.fillHeight: true

                    Hatch {
                        anchors.fill: parent
                        visible: card.empty
                    }
                    PlainButton {
                        id: button
                        objectName: card.empty ? "" : "boothEvent" + cell.index
                        anchors.fill: parent
                        visible: !card.empty
                        pressable: visible && !card.booth.readOnly
                        beside: false
                        text: card.booth.eventWords(cell.index)
                        secondLine: card.ages.length > cell.index ? card.ages[cell.index] : ""
                        iconName: card.booth.eventIcon(cell.index)
                        name: qsTr("%1 in %2, %3. Logs it.").arg(text).arg(card.title).arg(secondLine)
                        onClicked: card.asked(cell.index)
                    }
                }
            }
        }
    }
}
