// ForgottenClockSheet: a clock that ran on since before today: when did it end, or does it run?
// It opens by itself; closing it writes nothing. forgotten must be set.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property ForgottenClockViewModel forgotten

    z: 54
    opened: forgotten.asking
    title: qsTr("Clock of %1").arg(forgotten.who)
    onClosed: forgotten.putOff()

    Connections {
        target: sheet.forgotten
        function onChanged() {
            sheet.opened = sheet.forgotten.asking;
        }
    }

    Column {
        width: parent.width
        spacing: Theme.gap

        Words {
            width: parent.width
            text: sheet.forgotten.what
            bold: true
            size: Theme.lead
        }
        Words {
            width: parent.width
            text: sheet.forgotten.since
        }
        Words {
            width: parent.width
            text: sheet.forgotten.lastSeen
            color: Theme.pencil
        }
        PaperCard {
            width: parent.width
            name: qsTr("It ended on %1 at %2").arg(sheet.forgotten.endDay).arg(sheet.forgotten.endTime)

            Item {
                width: parent.width
                height: time.height

                Words {
                    width: parent.width - time.width - 12
                    anchors.verticalCenter: parent.verticalCenter
                    text: sheet.forgotten.endDay
                    mute: true
                    bold: true
                }
                TimeText {
                    id: time
                    anchors.right: parent.right
                    text: sheet.forgotten.endTime
                    mute: true
                    bold: true
                    size: Theme.screen
                }
            }
        }
        Flow {
            id: steps
            width: parent.width
            spacing: Theme.gap

            component Step: PlainButton {
                property int minutes: 0

                width: (steps.width - Theme.gap) / 2
                height: implicitHeight
                dashed: minutes < 0 ? !sheet.forgotten.mayEarlier : !sheet.forgotten.mayLater
                onClicked: sheet.forgotten.shift(minutes)
            }

            Step {
                objectName: "clockEarlier"
                minutes: -5
                text: qsTr("5 min earlier")
            }
            Step {
                objectName: "clockLater"
                minutes: 5
                text: qsTr("5 min later")
            }
            Step {
                minutes: -60
                text: qsTr("1 h earlier")
            }
            Step {
                minutes: 60
                text: qsTr("1 h later")
            }
        }
        SlabButton {
            objectName: "clockEnded"
            width: parent.width
            height: implicitHeight
            text: qsTr("It ended at %1").arg(sheet.forgotten.endTime)
            secondLine: qsTr("counts %1").arg(sheet.forgotten.counts)
            onClicked: sheet.forgotten.ended()
        }
        PlainButton {
            objectName: "clockStillRuns"
            width: parent.width
            height: implicitHeight
            text: qsTr("It still runs")
            secondLine: qsTr("nothing is written")
            onClicked: sheet.forgotten.stillRuns()
        }
    }
}
