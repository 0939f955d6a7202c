// OperationLine: one operation of a stage: its name, the hours used of those planned, who is at it.
import QtQuick
import Jambline.Theme

PaperCard {
    id: line

    required property string title
    required property string hours
    required property string who

    padding: 10

    Column {
        width: parent.width
        spacing: 2

        Words {
            width: parent.width
            text: line.title
        }
        Words {
            width: parent.width
            text: line.who === "" ? line.hours : qsTr("%1 · %2").arg(line.hours).arg(line.who)
            size: Theme.note
            color: Theme.pencil
        }
    }
}
