// ClimateSheet: air, surface and humidity typed on the big keys, and whether the paint goes on or
// waits, with the reason; opens to its sum. climate: the view model. Signal: whoAsked; kept.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property ClimateViewModel climate

    signal whoAsked
    signal kept

    function show() {
        climate.begin();
        opened = true;
    }

    title: qsTr("Air and surface")

    Connections {
        target: sheet.climate
        function onKept() {
            sheet.close();
            sheet.kept();
        }
        function onSumOpened() {
            sum.opened = true;
        }
    }

    Column {
        id: form
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gap

        NumberFields {
            width: parent.width
            rows: sheet.climate.fields
            onChose: field => sheet.climate.chooseField(field)
        }
        PaperCard {
            objectName: "climateAnswer"
            width: parent.width
            visible: sheet.climate.complete
            pressable: visible
            name: qsTr("%1. %2 Opens the sum.").arg(sheet.climate.answer).arg(sheet.climate.reason)
            onClicked: sheet.climate.openSum()

            Column {
                width: parent.width
                spacing: 8

                Item {
                    width: parent.width
                    height: Math.max(mark.height, said.height)

                    StateShape {
                        id: mark
                        kind: sheet.climate.answerShape
                        size: 32
                    }
                    Column {
                        id: said
                        x: mark.width + 12
                        width: parent.width - x
                        spacing: 2

                        Words {
                            width: parent.width
                            text: sheet.climate.answer
                            mute: true
                            bold: true
                            size: Theme.title
                        }
                        Words {
                            width: parent.width
                            text: sheet.climate.reason
                            mute: true
                        }
                    }
                }
                Repeater {
                    model: sheet.climate.gates

                    Item {
                        id: gate

                        required property string title
                        required property string value
                        required property string limit
                        required property int shape
                        required property string spoken

                        width: parent?.width ?? 0
                        height: Math.max(gateMark.height, name.height + limitWords.height)

                        StateShape {
                            id: gateMark
                            y: 1
                            kind: gate.shape
                            key: gate.title
                            size: 18
                        }
                        Words {
                            id: name
                            x: 28
                            width: parent.width - x - figure.width - 8
                            text: gate.title
                            mute: true
                        }
                        Words {
                            id: figure
                            anchors.right: parent.right
                            width: natural
                            text: gate.value
                            mute: true
                            bold: true
                        }
                        Words {
                            id: limitWords
                            x: 28
                            y: name.height
                            width: parent.width - x
                            text: gate.limit
                            mute: true
                            size: Theme.note
                            color: Theme.pencil
                        }
                    }
                }
                Words {
                    width: parent.width
                    text: sheet.climate.windowWords
                    mute: true
                    size: Theme.note
                    color: Theme.pencil
                }
            }
        }
        Flow {
            width: parent.width
            visible: sheet.climate.complete && sheet.climate.boothCount > 1
            spacing: Theme.gap

            Repeater {
                model: sheet.climate.booths

                PlainButton {
                    required property string key
                    required property string title
                    required chosen

                    width: Math.min(form.width, Math.max(112, implicitWidth))
                    height: implicitHeight
                    text: title
                    name: qsTr("Read in %1").arg(title)
                    onClicked: sheet.climate.chooseBooth(key)
                }
            }
        }
        TypedPad {
            objectName: "climatePad"
            width: parent.width
            height: implicitHeight
            visible: !sheet.climate.complete
            field: sheet.climate
        }
        SlabButton {
            objectName: "climateMain"
            width: parent.width
            height: implicitHeight
            text: sheet.climate.mainText
            secondLine: sheet.climate.mainSecond
            waits: sheet.climate.mainWaits
            onClicked: sheet.climate.act()
            onRefused: if (sheet.climate.complete)
                sheet.whoAsked()
        }
    }
    SumSheet {
        id: sum
        parent: sheet
        anchors.fill: parent
        keepClear: sheet.keepClear
        sum: sheet.climate.sum
    }
}
