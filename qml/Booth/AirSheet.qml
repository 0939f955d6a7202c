// AirSheet: what the record of the compressor says that feeds the airlines. Nothing is answered
// before a tap. show() opens it.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property RegisterViewModel protection
    property list<int> answers: [-1, -1, -1]  // yes 0, no 1
    readonly property bool answered: answers[0] >= 0 && answers[1] >= 0 && answers[2] >= 0

    function show() {
        protection.nothingWrong();
        answers = [-1, -1, -1];
        day.text = protection.todayText;
        valid.text = "";
        opened = true;
    }
    function answer(which: int, index: int) {
        const next = Array.from(answers);
        next[which] = index;
        answers = next;
    }

    title: qsTr("Breathing air")

    Connections {
        target: sheet.protection
        function onKept() {
            sheet.close();
        }
    }

    Column {
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gutter

        Chips {
            width: parent.width
            title: qsTr("Grade D is met, says the record")
            key: "airGrade"
            words: [qsTr("Met"), qsTr("Not met")]
            chosen: sheet.answers[0]
            onPicked: index => sheet.answer(0, index)
        }
        Chips {
            width: parent.width
            title: qsTr("Alarm of carbon monoxide")
            key: "airCo"
            words: [qsTr("Works"), qsTr("Does not work")]
            chosen: sheet.answers[1]
            onPicked: index => sheet.answer(1, index)
        }
        Chips {
            width: parent.width
            title: qsTr("Alarm of low flow")
            key: "airFlow"
            words: [qsTr("Works"), qsTr("Does not work")]
            chosen: sheet.answers[2]
            onPicked: index => sheet.answer(2, index)
        }
        FormField {
            id: day
            objectName: "airDay"
            width: parent.width
            form: sheet.protection
            field: "day"
            label: qsTr("Checked on")
            placeholder: qsTr("3/9/2026")
            tail: sheet.protection.dayWords(text)
            maximumLength: 10
        }
        FormField {
            id: valid
            objectName: "airValid"
            width: parent.width
            form: sheet.protection
            field: "validDays"
            label: qsTr("Next check after, in days")
            placeholder: qsTr("as the shop's program says")
            digitsOnly: true
            maximumLength: 5
        }
        SlabButton {
            objectName: "airKeep"
            width: parent.width
            height: implicitHeight
            text: qsTr("Log the breathing air")
            secondLine: !sheet.protection.mayKeep ? qsTr("say who you are first") : waits ? qsTr("answer the three first") : ""
            waits: !sheet.protection.mayKeep || !sheet.answered
            onClicked: sheet.protection.keepAir(sheet.answers[0] === 0, sheet.answers[1] === 0, sheet.answers[2] === 0, day.text, valid.text)
        }
    }
}
