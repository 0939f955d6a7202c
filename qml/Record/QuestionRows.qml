// QuestionRows: what a manager asks of months and years, as rows that lead to their pages; folded to
// one line until it is opened. ask: the view model; foldWords: what the line says; place: for other
// ways that unfold with them. Signal: questionAsked(key).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: list

    required property QuestionViewModel ask
    property bool unfolded: false
    property string foldWords: qsTr("Questions of months and years")
    readonly property alias place: between
    readonly property int columns: Math.max(1, Math.min(4, Math.floor((width + Theme.gap) / (264 * Theme.textScale + Theme.gap))))

    signal questionAsked(string key)

    spacing: Theme.gap
    Accessible.role: Accessible.Grouping
    Accessible.name: qsTr("Questions of months and years")

    PlainButton {
        objectName: "questionsFold"
        width: list.columns > 2 ? Math.min(parent.width, Math.max(320, implicitWidth)) : parent.width
        height: implicitHeight
        text: list.unfolded ? qsTr("Fold away") : list.foldWords
        chosen: list.unfolded
        onClicked: list.unfolded = !list.unfolded
    }
    Item {
        id: between
        visible: list.unfolded && children.length > 0
        width: parent.width
        height: childrenRect.height
    }
    Flow {
        width: parent.width
        spacing: Theme.gap
        visible: list.unfolded

        Repeater {
            model: list.unfolded ? list.ask.questions : null

            PaperCard {
                id: row

                required property string key
                required property string title
                required property string says

                objectName: "question_" + key
                width: Math.floor((list.width - (list.columns - 1) * Theme.gap) / list.columns)
                pressable: true
                name: qsTr("%1, %2").arg(title).arg(says)
                onClicked: list.questionAsked(key)

                Column {
                    width: parent.width

                    Words {
                        width: parent.width
                        text: row.title
                        mute: true
                        bold: true
                    }
                    Words {
                        width: parent.width
                        text: row.says
                        mute: true
                        size: Theme.note
                        color: Theme.pencil
                    }
                }
            }
        }
    }
}
