// HoursSum: the sum of the day or the week, what is to be known of it, redo and comeback apart, by car
// and operation, and what those cars waited for. hours: the view model.
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

    PaperCard {
        objectName: "hoursTotal"
        width: parent.width
        name: Array.from([qsTr("%1, %2").arg(sums.hours.who).arg(sums.hours.total), sums.hours.totalNote, sums.hours.dayNote])
            .filter(words => words !== "").join(", ")

        Column {
            width: parent.width
            spacing: 2

            TimeText {
                text: sums.hours.total
                mute: true
                bold: true
                size: Theme.screen
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: sums.hours.totalNote
                mute: true
                color: Theme.pencil
            }
            Words {
                objectName: "hoursDayNote"
                width: parent.width
                visible: text !== ""
                text: sums.hours.dayNote
                mute: true
                bold: true
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: sums.hours.twiceWords
                mute: true
                bold: true
                color: Theme.oxide
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: sums.hours.doubtWords
                mute: true
                bold: true
                color: Theme.ochreInk
            }
        }
    }
    Column {
        width: parent.width
        visible: kinds.count > 0

        Repeater {
            id: kinds
            model: sums.hours.kinds

            SumLine {
                required property string key
                required title
                required hours

                width: sums.width
            }
        }
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
