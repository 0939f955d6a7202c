// HoursLines: the day or the week by car and operation, and what those cars waited for.
// hours: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: sums

    required property HoursViewModel hours

    spacing: Theme.gap

    component Heading: Words {
        width: sums.width
        topPadding: 10
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }

    Heading {
        visible: sums.hours.lineCount > 0
        text: qsTr("By car and operation")
    }
    Column {
        width: parent.width

        Repeater {
            model: sums.hours.lines

            SumLine {
                required property int index
                required property string car
                required title
                required hours
                required note

                objectName: "hoursLine" + index
                width: sums.width
                second: car
            }
        }
    }
    Heading {
        visible: sums.hours.waitCount > 0
        text: qsTr("What these cars waited for")
    }
    Column {
        width: parent.width

        Repeater {
            model: sums.hours.waits

            SumLine {
                required property string when
                required title

                width: sums.width
                second: when
            }
        }
    }
}
