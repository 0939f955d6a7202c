// CalendarHours: when the shop opens and closes on the chosen weekday. calendar must be set.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: hours

    required property CalendarViewModel calendar

    function fill() {
        opens.text = calendar.opens;
        closes.text = calendar.closes;
    }

    spacing: Theme.gap
    Component.onCompleted: fill()

    Row {
        width: parent.width
        visible: hours.calendar.dayOpen || hours.calendar.wrongHours !== ""
        spacing: Theme.gap

        FaceField {
            id: opens
            objectName: "calendarOpens"
            width: (parent.width - Theme.gap) / 2
            label: qsTr("Opens")
            maximumLength: 5
            onEdited: hours.calendar.setHours(opens.text, closes.text)
        }
        FaceField {
            id: closes
            objectName: "calendarCloses"
            width: opens.width
            label: qsTr("Closes")
            maximumLength: 5
            wrong: hours.calendar.wrongHours
            onEdited: hours.calendar.setHours(opens.text, closes.text)
        }
    }
    ActRow {
        width: parent.width

        PlainButton {
            objectName: "calendarShut"
            text: hours.calendar.dayOpen ? qsTr("Closed that day") : qsTr("Open that day")
            onClicked: {
                if (hours.calendar.dayOpen)
                    hours.calendar.closeDay();
                else
                    hours.calendar.openDay();
                hours.fill();
            }
        }
        PlainButton {
            objectName: "calendarSame"
            text: qsTr("Same Monday to Friday")
            onClicked: hours.calendar.sameOnWeekdays()
        }
    }
}
