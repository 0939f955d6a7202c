// DueSheet: the day on which something falls due for the person who is open. Only the day is kept.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property RegisterViewModel protection
    property int what: 0

    function show() {
        protection.nothingWrong();
        choose(0);
        opened = true;
    }
    function choose(index: int) {
        what = index;
        day.text = protection.dueDay(index);
    }

    title: qsTr("Due day, %1").arg(protection.personName)

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
            title: qsTr("What falls due")
            key: "dueKind"
            words: sheet.protection.dues
            chosen: sheet.what
            onPicked: index => sheet.choose(index)
        }
        FormField {
            id: day
            objectName: "dueDay"
            width: parent.width
            form: sheet.protection
            field: "day"
            label: qsTr("Due on")
            placeholder: qsTr("3/9/2026")
            tail: sheet.protection.dayWords(text)
            maximumLength: 10
            onAccepted: sheet.protection.keepDue(sheet.what, text)
        }
        Words {
            width: parent.width
            text: qsTr("Only the day. Nothing of what a doctor found is kept here.")
            size: Theme.note
            color: Theme.pencil
        }
        SlabButton {
            objectName: "dueKeep"
            width: parent.width
            height: implicitHeight
            text: qsTr("Set this day")
            secondLine: waits ? qsTr("a manager sets it") : ""
            waits: !sheet.protection.manager
            onClicked: sheet.protection.keepDue(sheet.what, day.text)
        }
    }
}
