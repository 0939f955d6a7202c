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

    function fill() {
        opens.text = calendar.opens;
        closes.text = calendar.closes;
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

        PlainButton {
            required property int key
            required property string title
            required property string words
            required property bool chosen

            objectName: "calendarDay" + key
            width: rows.width
            height: implicitHeight
            pressable: rows.calendar.manager
            text: title
            secondLine: words
            onClicked: {
                rows.calendar.choose(key);
                rows.fill();
            }
        }
    }
    Column {
        id: hours
        visible: rows.calendar.day >= 0
        width: parent.width
        height: visible ? implicitHeight : 0
        spacing: Theme.gap

        Heading { text: rows.calendar.dayTitle }
        Row {
            width: parent.width
            visible: rows.calendar.dayOpen || rows.calendar.wrongHours !== ""
            spacing: Theme.gap

            FaceField {
                id: opens
                objectName: "calendarOpens"
                width: (parent.width - Theme.gap) / 2
                label: qsTr("Opens")
                maximumLength: 5
                onEdited: rows.calendar.setHours(opens.text, closes.text)
            }
            FaceField {
                id: closes
                objectName: "calendarCloses"
                width: opens.width
                label: qsTr("Closes")
                maximumLength: 5
                wrong: rows.calendar.wrongHours
                onEdited: rows.calendar.setHours(opens.text, closes.text)
            }
        }
        ActRow {
            width: parent.width

            PlainButton {
                objectName: "calendarShut"
                text: rows.calendar.dayOpen ? qsTr("Closed that day") : qsTr("Open that day")
                onClicked: {
                    if (rows.calendar.dayOpen)
                        rows.calendar.closeDay();
                    else
                        rows.calendar.openDay();
                    rows.fill();
                }
            }
            PlainButton {
                objectName: "calendarSame"
                text: qsTr("Same Monday to Friday")
                onClicked: rows.calendar.sameOnWeekdays()
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
        id: day
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
            if (rows.calendar.addClosed(day.text))
                day.text = "";
            else
                day.focusField();
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
