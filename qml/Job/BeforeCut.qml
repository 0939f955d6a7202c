// BeforeCut: what is answered before anyone sands or machines paint, all on one sheet. check: the
// view model; it opens when check asks and closes when the answers are kept. Signal: answered.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property BeforeCutViewModel check

    signal answered

    title: check.title

    Connections {
        target: sheet.check
        function onAsked() {
            sheet.opened = true;
        }
        function onDone() {
            sheet.close();
            sheet.answered();
        }
        function onOpened() {
            answers.opened = true;
        }
    }

    Column {
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gap

        Words {
            width: parent.width
            visible: text !== ""
            text: sheet.check.knownWords
            size: Theme.note
            color: Theme.pencil
        }
        Row {
            width: parent.width
            visible: sheet.check.stopWords !== ""
            spacing: 8

            StateShape {
                kind: ShapeKind.Must
                size: 22
            }
            Words {
                width: parent.width - 30
                text: sheet.check.stopWords
                bold: true
                color: sheet.check.stopped ? Theme.oxide : Theme.ink
            }
        }
        Grid {
            id: grid

            readonly property real cell: (width - (columns - 1) * columnSpacing) / columns

            width: parent.width
            columns: Theme.textScale > 1.2 ? 1 : 2
            columnSpacing: 6
            rowSpacing: 6

            Repeater {
                model: sheet.check.items

                CutTile {
                    required property string key

                    width: grid.cell
                    height: implicitHeight
                    onClicked: sheet.check.press(key)
                    onHeld: sheet.check.open(key)
                }
            }
        }
        Words {
            width: parent.width
            text: qsTr("The product's sheet and the safety data sheet win. This card is common practice and has no other source.")
            size: Theme.small
            color: Theme.pencil
        }
        PlainButton {
            objectName: "cutRest"
            width: parent.width
            visible: sheet.check.anyLeft && !sheet.check.stopped
            pressable: visible
            text: sheet.check.restWords
            onClicked: sheet.check.answerTheRest()
        }
        SlabButton {
            objectName: "cutKeep"
            width: parent.width
            height: implicitHeight
            text: sheet.check.mainText
            secondLine: sheet.check.mainSecond
            waits: sheet.check.mainWaits
            onClicked: sheet.check.keep()
        }
    }
    ChoiceSheet {
        id: answers
        parent: sheet
        anchors.fill: parent
        title: sheet.check.openTitle
        choices: sheet.check.openAnswers
        current: sheet.check.openAnswer
        keepClear: sheet.keepClear
        onChose: row => sheet.check.choose(row)
    }
}
