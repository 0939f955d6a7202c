// KeptQuestionSheet: gives a question a name to keep it under, or another name, or takes it away.
// filter: the view model. ask(again): again: the one that is asked and kept already.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property RecordFilterViewModel filter
    property bool again: false

    function ask(kept: bool) {
        again = kept;
        name.text = kept ? filter.chosen : filter.suggestedName;
        opened = true;
        name.focusField();
    }

    function say() {
        if (again ? filter.rename(name.text) : filter.keep(name.text))
            close();
    }

    title: again ? qsTr("Kept question") : qsTr("Keep this question")
    onClosed: filter.nameAgain()

    Column {
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gutter

        FaceField {
            id: name
            objectName: "questionName"
            width: parent.width
            label: qsTr("Its name")
            maximumLength: 60
            wrong: sheet.filter.wrongName
            onEdited: sheet.filter.nameAgain()
            onAccepted: sheet.say()
        }
        Words {
            width: parent.width
            text: qsTr("Kept on this device, with the typed words. \"This week\" is the week in which it is asked.")
            size: Theme.note
            color: Theme.pencil
        }
        SlabButton {
            objectName: "questionKeep"
            width: parent.width
            text: sheet.again ? qsTr("Rename") : qsTr("Keep")
            onClicked: sheet.say()
        }
        PlainButton {
            objectName: "questionRemove"
            width: parent.width
            height: implicitHeight
            visible: sheet.again
            pressable: visible
            text: qsTr("Remove")
            secondLine: qsTr("only the question; it can be put back")
            onClicked: {
                sheet.filter.remove();
                sheet.close();
            }
        }
    }
}
