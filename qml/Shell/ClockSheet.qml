// ClockSheet: who it is, what the clock goes on, since when, pause and stop; and the ways to the hours, to
// another car, and to say what the car waits for. clock must be set.
// Signals: hoursAsked, waitAsked, otherCarAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property ClockViewModel clock
    required property Session session

    signal hoursAsked
    signal waitAsked
    signal otherCarAsked

    title: qsTr("Who is it?")
    onOpenedChanged: {
        earlier.open = false;
        earlier.typing = false;
        if (clock.mayEarlier)
            clock.sayEarlier(0);
    }

    Column {
        width: parent.width
        spacing: Theme.gap

        PeopleTiles {
            width: parent.width
            clock: sheet.clock
        }
        AddPerson {
            width: parent.width
            visible: !sheet.clock.anyPeople
            clock: sheet.clock
        }
        ActRow {
            width: parent.width
            visible: sheet.clock.running || sheet.clock.paused

            PlainButton {
                objectName: "pauseClock"
                text: sheet.clock.paused ? qsTr("Go on") : qsTr("Pause")
                secondLine: sheet.clock.paused ? sheet.clock.operation : qsTr("starts again in one tap")
                onClicked: sheet.clock.paused ? sheet.clock.goOn() : sheet.clock.pause()
            }
            PlainButton {
                objectName: "stopClock"
                text: qsTr("Stop")
                secondLine: sheet.clock.daySum
                onClicked: sheet.clock.stop()
            }
        }
        ActRow {
            width: parent.width
            visible: sheet.session.hasPerson

            PlainButton {
                objectName: "clockWait"
                visible: sheet.session.hasCar
                pressable: visible
                text: qsTr("Wait")
                name: qsTr("Wait, the car waits with a reason")
                onClicked: sheet.waitAsked()
            }
            PlainButton {
                objectName: "clockOtherCar"
                text: qsTr("Another car")
                onClicked: sheet.otherCarAsked()
            }
            PlainButton {
                objectName: "clockHours"
                text: qsTr("Hours")
                onClicked: sheet.hoursAsked()
            }
        }
        StartedEarlier {
            id: earlier
            width: parent.width
            visible: sheet.clock.mayEarlier
            clock: sheet.clock
        }
        Item {
            visible: sheet.session.hasPerson
            width: parent.width
            height: 10 + plate.y - switching.y + Math.max(switching.height, plate.height)

            readonly property bool folded: switching.natural + plate.natural + 16 > width

            Words {
                id: switching
                y: 8
                width: parent.folded ? parent.width : parent.width - plate.width - 8
                text: sheet.clock.carWords === "" ? qsTr("Open a car to start a clock on it")
                    : sheet.clock.running ? qsTr("%1 switches to").arg(sheet.session.personName)
                                          : qsTr("%1 starts").arg(sheet.session.personName)
                bold: true
                size: Theme.lead
            }
            Words {
                id: plate
                y: parent.folded ? switching.y + switching.height + 2 : 8
                x: parent.folded ? 0 : parent.width - width
                width: parent.folded ? parent.width : natural
                text: sheet.clock.carWords
                color: Theme.pencil
            }
        }
        Flow {
            id: works
            visible: sheet.session.hasPerson
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: sheet.clock.operations

                PlainButton {
                    id: work

                    required property int index
                    required property string operationId
                    required property string title
                    required property string hours
                    required property bool isOver
                    required property bool isNext
                    required property bool isMine
                    // The tag stands in the corner where the words leave room for it.
                    readonly property bool tagged: isNext && width - measure.natural > 2 * tag.implicitWidth + 24

                    objectName: "clockWork" + index
                    width: (works.width - Theme.gap) / 2
                    height: Math.max(76, implicitHeight)
                    text: title
                    secondLine: isNext && !tagged ? qsTr("next · %1").arg(hours) : hours
                    chosen: isMine && sheet.clock.running
                    name: Array.from([title, hours, isOver ? qsTr("over the estimate") : "", isNext ? qsTr("next") : ""])
                        .filter(words => words !== "").join(", ")
                    onClicked: {
                        if (!chosen)
                            sheet.clock.start(operationId);
                    }

                    Words {
                        id: measure
                        visible: false
                        text: work.title
                        bold: true
                    }
                    TapeLabel {
                        id: tag
                        visible: work.tagged
                        anchors.right: parent.right
                        anchors.rightMargin: 6
                        y: -4
                        lift: 20
                        height: implicitHeight
                        width: implicitWidth
                        textSize: Theme.small
                        text: qsTr("next")
                        Accessible.ignored: true
                    }
                }
            }
        }
    }
}
