// CalendarRows: when the shop is open: hours of each weekday, days closed, and which cars are
// promised for a time at which nobody works. A manager changes them; kept by the main act.
// calendar must be set.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: rows

    required property CalendarViewModel calendar

    spacing: Theme.gap

    component Heading: Words {
        width: parent ? parent.width : 0
        topPadding: 8
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }

    Words {
        width: parent.width
        text: rows.calendar.summary
        bold: true
    }
    Words {
        width: parent.width
        text: rows.calendar.manager ? qsTr("When a car will be ready is counted in these hours.")
                                    : qsTr("When a car will be ready is counted in these hours. A manager changes them.")
        color: Theme.pencil
    }
    Repeater {
        model: rows.calendar.week

        Column {
            id: day

            required property int key
            required property string title
            required property string words
            required property bool chosen

            width: rows.width
            spacing: Theme.gap

            PlainButton {
                objectName: "calendarDay" + day.key
                width: parent.width
                height: implicitHeight
                pressable: rows.calendar.manager
                chosen: day.chosen
                text: day.title
                secondLine: day.words
                onClicked: rows.calendar.choose(day.key)
            }
            Repeater {
                model: day.chosen ? 1 : 0

                CalendarHours {
                    width: day.width
                    calendar: rows.calendar
                }
            }
        }
    }
    Heading { text: qsTr("Days closed") }
    Words {
        width: parent.width
        visible: rows.calendar.closedCount === 0
        text: qsTr("No day is set. On one of these nobody works, and a car takes a day longer.")
        color: Theme.pencil
    }
    Repeater {
        model: rows.calendar.closed

        PaperCard {
            id: shut

            required property int key
            required property string title
            required property string words

            width: rows.width
            padding: 8
            name: qsTr("%1, %2").arg(title).arg(words)

            Item {
                width: parent.width
                height: Math.max(said.height, out.height)

                Column {
                    id: said
                    width: parent.width - (out.visible ? out.width + 8 : 0)
                    anchors.verticalCenter: parent.verticalCenter

                    Words {
                        width: parent.width
                        text: shut.title
                        mute: true
                        bold: true
                    }
                    Words {
                        width: parent.width
                        text: shut.words
                        mute: true
                        size: Theme.note
                        color: Theme.pencil
                    }
                }
                PlainButton {
                    id: out
                    objectName: "calendarTake"
                    anchors.right: parent.right
                    visible: rows.calendar.manager
                    pressable: visible
                    text: qsTr("Take out")
                    name: qsTr("Take out: %1").arg(shut.title)
                    onClicked: rows.calendar.takeClosed(shut.key)
                }
            }
        }
    }
    FaceField {
        id: typed
        objectName: "calendarDayTyped"
        width: parent.width
        visible: rows.calendar.manager
        height: visible ? implicitHeight : 0
        label: qsTr("One more day closed")
        placeholder: qsTr("12/25/2026")
        maximumLength: 10
        wrong: rows.calendar.wrongDay
    }
    PlainButton {
        objectName: "calendarAdd"
        visible: rows.calendar.manager
        pressable: visible
        width: parent.width
        height: visible ? implicitHeight : 0
        text: qsTr("Close on that day")
        onClicked: {
            if (rows.calendar.addClosed(typed.text))
                typed.text = "";
            else
                typed.focusField();
        }
    }
    Repeater {
        model: rows.calendar.promised

        Row {
            id: promise

            required property string modelData

            width: rows.width
            spacing: 8
            Accessible.role: Accessible.StaticText
            Accessible.name: modelData

            StateShape {
                id: mark
                kind: ShapeKind.Waits
                size: 20
                ground: Theme.paper
            }
            Words {
                width: parent.width - mark.width - 8
                text: qsTr("%1: nobody works then.").arg(promise.modelData)
                mute: true
                size: Theme.note
            }
        }
    }
    SlabButton {
        objectName: "calendarKeep"
        visible: rows.calendar.manager
        pressable: visible
        width: parent.width
        height: visible ? implicitHeight : 0
        text: qsTr("Keep open hours")
        secondLine: rows.calendar.waitsFor
        waits: secondLine !== ""
        onClicked: rows.calendar.keep()
    }
}
