// ReadingSheet: one reading of a booth on the big keys; below the act what was typed before, what else
// could be read, with what and when. reading: the view model; show() when it was opened. Signal: whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property BoothReadingViewModel reading
    property bool moving: false
    readonly property int pending: pad.typed !== "" ? pad.value : -1

    signal whoAsked

    function show() {
        moving = false;
        pad.typed = "";
        opened = true;
    }

    title: reading.title

    Connections {
        target: sheet.reading
        function onKept() {
            sheet.close();
        }
        function onTaken() {
            pad.typed = "";
            pad.whole = false;
        }
    }

    Column {
        id: form
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gap

        KeyPad {
            id: pad
            objectName: "readingPad"
            width: parent.width
            height: implicitHeight
            focus: true
            kind: sheet.reading.pad
            digits: sheet.reading.digits
            label: sheet.reading.valueWords === "" ? sheet.reading.label : qsTr("%1 · %2").arg(sheet.reading.label).arg(sheet.reading.valueWords)
            unitText: sheet.reading.unit
            unitKey: sheet.reading.several ? qsTr("One more") : ""
            wrong: sheet.reading.wrong
            onComplete: value => sheet.reading.type(value)
            onUnitPressed: sheet.reading.type(sheet.pending)
        }
        SlabButton {
            objectName: "readingKeep"
            width: parent.width
            height: implicitHeight
            text: qsTr("Log it")
            secondLine: !sheet.reading.mayKeep ? qsTr("say who you are first")
                : sheet.reading.valueCount === 0 && sheet.pending < 0 ? qsTr("type it first") : sheet.reading.whenWords
            waits: !sheet.reading.mayKeep || (sheet.reading.valueCount === 0 && sheet.pending < 0)
            onRefused: {
                if (!sheet.reading.mayKeep)
                    sheet.whoAsked();
            }
            onClicked: sheet.reading.keep(sheet.pending)
        }
        Flow {
            width: parent.width
            visible: sheet.reading.valueCount > 0
            spacing: Theme.gap

            Repeater {
                model: sheet.reading.values

                PlainButton {
                    required property int key
                    required property string words

                    objectName: "value_" + key
                    height: implicitHeight
                    beside: true
                    text: words
                    iconName: "erase"
                    name: qsTr("%1. Takes it out.").arg(words)
                    onClicked: sheet.reading.drop(key)
                }
            }
        }
        Words {
            width: parent.width
            text: sheet.reading.hint
            size: Theme.note
            color: Theme.pencil
        }
        Grid {
            id: whats
            width: parent.width
            columns: Theme.textScale > 1.2 ? 2 : 4
            columnSpacing: Theme.gap
            rowSpacing: Theme.gap

            Repeater {
                model: sheet.reading.whats

                PlainButton {
                    required property int key
                    required property string title
                    required chosen

                    objectName: "reading_" + key
                    width: (whats.width - (whats.columns - 1) * whats.columnSpacing) / whats.columns
                    height: implicitHeight
                    text: title
                    textSize: Theme.note
                    onClicked: sheet.reading.choose(key)
                }
            }
        }
        Column {
            width: parent.width
            visible: sheet.reading.what === 0
            spacing: 6

            Words {
                width: parent.width
                text: qsTr("The instrument may be off by")
                bold: true
                size: Theme.note
                color: Theme.pencil
            }
            Row {
                id: instruments
                width: parent.width
                spacing: Theme.gap

                Repeater {
                    model: sheet.reading.instruments

                    PlainButton {
                        required property int modelData

                        objectName: "instrument_" + modelData
                        width: (instruments.width - 2 * instruments.spacing) / 3
                        height: implicitHeight
                        text: qsTr("%1 %").arg(modelData)
                        chosen: sheet.reading.instrument === modelData
                        onClicked: sheet.reading.instrument = modelData
                    }
                }
            }
        }
        PlainButton {
            objectName: "readingEarlier"
            width: parent.width
            height: implicitHeight
            visible: !sheet.moving
            pressable: visible
            text: qsTr("It was earlier")
            secondLine: sheet.reading.whenWords
            onClicked: sheet.moving = true
        }
        Grid {
            id: steps
            width: parent.width
            visible: sheet.moving
            columns: 2
            columnSpacing: Theme.gap
            rowSpacing: Theme.gap

            component Step: PlainButton {
                property int days: 0

                width: (steps.width - Theme.gap) / 2
                height: implicitHeight
                onClicked: sheet.reading.shift(days)
            }

            Step {
                objectName: "readingDayEarlier"
                days: -1
                text: qsTr("1 day earlier")
                secondLine: sheet.reading.whenWords
            }
            Step {
                days: 1
                text: qsTr("1 day later")
            }
            Step {
                objectName: "readingMonthEarlier"
                days: -30
                text: qsTr("30 days earlier")
            }
            Step {
                days: 30
                text: qsTr("30 days later")
            }
        }
    }
}
