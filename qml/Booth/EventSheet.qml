// EventSheet: one thing done to a booth: logged now, or said to be earlier; corrected later. A change
// of filters asks whether the old ones are out of the building, and each answer logs it.
// Signal: whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property BoothViewModel booth
    property bool moving: false

    signal whoAsked

    function keep(act: var) {
        if (booth.mayKeep)
            act();
        else
            whoAsked();
    }

    title: booth.draftTitle
    onOpenedChanged: moving = booth.correcting

    Cautions {
        id: cautions
    }
    Connections {
        target: sheet.booth
        function onEventKept() {
            sheet.close();
        }
    }

    Column {
        id: form
        width: parent.width
        spacing: 12

        Flow {
            id: whats
            width: parent.width
            visible: sheet.booth.correcting
            spacing: Theme.gap

            Repeater {
                model: sheet.booth.correcting ? sheet.booth.eventCount : 0

                PlainButton {
                    required property int index

                    width: Math.min(form.width, Math.max(104, implicitWidth))
                    height: implicitHeight
                    beside: true
                    text: sheet.booth.eventWords(index)
                    iconName: sheet.booth.eventIcon(index)
                    chosen: sheet.booth.what === index
                    onClicked: sheet.booth.changeWhat(index)
                }
            }
        }
        Flow {
            width: parent.width
            visible: sheet.booth.correcting && sheet.booth.boothCount > 1
            spacing: Theme.gap

            Repeater {
                model: sheet.booth.correcting ? sheet.booth.booths : null

                PlainButton {
                    required property string key
                    required property string title

                    width: Math.min(form.width, Math.max(104, implicitWidth))
                    height: implicitHeight
                    text: title
                    chosen: sheet.booth.draftBooth === key
                    onClicked: sheet.booth.changeBooth(key)
                }
            }
        }
        PlainButton {
            objectName: "eventEarlier"
            width: parent.width
            height: implicitHeight
            visible: !sheet.moving
            pressable: visible
            text: qsTr("It was earlier")
            secondLine: qsTr("else it is logged as now, %1").arg(sheet.booth.whenTime)
            onClicked: sheet.moving = true
        }
        Column {
            width: parent.width
            visible: sheet.moving
            spacing: Theme.gap

            PaperCard {
                width: parent.width
                name: qsTr("When it was done: %1 at %2").arg(sheet.booth.whenDay).arg(sheet.booth.whenTime)

                Item {
                    width: parent.width
                    height: Math.max(time.height, day.height)

                    Words {
                        id: day
                        width: parent.width - time.width - 12
                        anchors.verticalCenter: parent.verticalCenter
                        text: sheet.booth.earlier ? sheet.booth.whenDay : qsTr("Now")
                        mute: true
                        bold: true
                    }
                    TimeText {
                        id: time
                        anchors.right: parent.right
                        anchors.verticalCenter: parent.verticalCenter
                        text: sheet.booth.whenTime
                        mute: true
                        bold: true
                        size: Theme.screen
                    }
                }
            }
            Row {
                width: parent.width
                visible: sheet.booth.whenRefused !== ""
                spacing: 10

                StateShape {
                    id: must
                    kind: ShapeKind.Must
                    size: 22
                    ground: Theme.paper
                }
                Words {
                    objectName: "whenRefused"
                    width: parent.width - must.width - 10
                    text: sheet.booth.whenRefused
                    bold: true
                    color: Theme.oxide
                }
            }
            Grid {
                id: steps
                width: parent.width
                columns: 2
                columnSpacing: Theme.gap
                rowSpacing: Theme.gap

                component Step: PlainButton {
                    property int minutes: 0

                    width: (steps.width - Theme.gap) / 2
                    height: implicitHeight
                    onClicked: sheet.booth.shift(minutes)
                }

                Step {
                    objectName: "eventDayEarlier"
                    minutes: -24 * 60
                    text: qsTr("1 day earlier")
                }
                Step {
                    objectName: "eventDayLater"
                    minutes: 24 * 60
                    text: qsTr("1 day later")
                }
                Step {
                    objectName: "eventHourEarlier"
                    minutes: -60
                    text: qsTr("1 h earlier")
                }
                Step {
                    minutes: 60
                    text: qsTr("1 h later")
                }
                Step {
                    minutes: -10
                    text: qsTr("10 min earlier")
                }
                Step {
                    minutes: 10
                    text: qsTr("10 min later")
                }
            }
            PlainButton {
                width: parent.width
                height: implicitHeight
                visible: sheet.booth.earlier
                pressable: visible
                text: qsTr("It was now")
                onClicked: {
                    sheet.booth.sayNow();
                    sheet.moving = sheet.booth.correcting;
                }
            }
        }
        Words {
            width: parent.width
            visible: sheet.booth.asksFilters
            topPadding: 4
            text: cautions.oldFilters
        }
        SlabButton {
            objectName: "eventKeep"
            width: parent.width
            height: implicitHeight
            text: sheet.booth.asksFilters ? qsTr("Yes, the old ones are out")
                : sheet.booth.correcting ? qsTr("Correct it") : qsTr("Log it")
            secondLine: !sheet.booth.mayKeep ? qsTr("say who you are first")
                : !sheet.booth.asksFilters ? ""
                : sheet.booth.correcting ? qsTr("corrects it") : qsTr("logs the change")
            waits: !sheet.booth.mayKeep
            onRefused: sheet.whoAsked()
            onClicked: sheet.booth.asksFilters ? sheet.booth.keepFilterChange(true) : sheet.booth.keepEvent()
        }
        PlainButton {
            objectName: "eventFiltersIn"
            width: parent.width
            height: implicitHeight
            visible: sheet.booth.asksFilters
            pressable: visible
            text: qsTr("Not out yet")
            secondLine: sheet.booth.correcting ? qsTr("corrects it, and says so on the booth") : qsTr("logs the change, and says so on the booth")
            onClicked: sheet.keep(() => sheet.booth.keepFilterChange(false))
        }
    }
}
