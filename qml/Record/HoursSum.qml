// HoursSum: the sum of the day or the week, what is to be known of it, redo and comeback apart.
// hours: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: sums

    required property HoursViewModel hours

    spacing: Theme.gap

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
}
