// BoothCard: one booth on its tape, and the five things that are done to it, each with how long ago
// it was last logged. empty: the form of a booth that is not there yet, hatched, nothing to press.
// Signals: opened (the tape), asked(event), filtersOut (the old filters have left the building).
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
    property bool empty: false

    signal opened
    signal asked(int event)
    signal filtersOut

    dashed: empty
    must: filtersStillIn
    name: qsTr("%1, %2").arg(title).arg(kindWords)

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
                    text: qsTr("Old filters are still in the building. They can heat up by themselves: keep them wet or sealed outdoors, as the local rule says.")
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
