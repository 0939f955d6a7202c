// CartridgeSheet: a cartridge was changed: in which respirator, after how many hours the next one is
// due, and what that schedule rests on. show() fills it with the person's last one.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property RegisterViewModel protection
    property string chosen: ""

    function show() {
        protection.nothingWrong();
        chosen = "";
        hours.text = "";
        basisField.text = "";
        opened = true;
        if (worn.count === 1)
            (worn.itemAt(0) as PlainButton).press();
    }

    title: qsTr("Cartridge changed, %1").arg(protection.personName)

    Connections {
        target: sheet.protection
        function onKept() {
            sheet.close();
        }
    }

    Column {
        id: page
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gutter

        Words {
            width: parent.width
            visible: sheet.protection.cartridgeCount === 0
            text: qsTr("No respirator in the register has a cartridge.")
        }
        Words {
            width: parent.width
            visible: sheet.protection.cartridgeCount > 0
            text: qsTr("In which respirator")
            bold: true
            size: Theme.note
            color: Theme.pencil
        }
        Repeater {
            id: worn
            model: sheet.protection.cartridges

            PlainButton {
                required property int index
                required property string key
                required property string title
                required property string schedule
                required property string basis

                objectName: "cartridgeOf" + index
                width: page.width
                height: implicitHeight
                text: title
                secondLine: schedule === "" ? qsTr("no schedule entered yet") : qsTr("schedule %1 h").arg(schedule)
                chosen: sheet.chosen === key
                onClicked: {
                    sheet.chosen = key;
                    hours.text = schedule;
                    basisField.text = basis;
                }
            }
        }
        WrongLine {
            width: parent.width
            text: sheet.protection.wrongField === "respirator" ? sheet.protection.wrongWords : ""
        }

        FormField {
            id: hours
            objectName: "cartridgeHours"
            width: parent.width
            form: sheet.protection
            field: "hours"
            label: qsTr("Change it again after, in hours of spraying")
            maximumLength: 8
        }
        FormField {
            id: basisField
            objectName: "cartridgeBasis"
            width: parent.width
            form: sheet.protection
            field: "basis"
            label: qsTr("What these hours rest on")
            placeholder: qsTr("maker's service life at 50 ppm, 70 %")
            maximumLength: 200
        }
        Words {
            width: parent.width
            text: qsTr("The program makes up no schedule. It counts the hours with the gun up and says when the shop's own are over. Smell is no sign to wait for.")
            size: Theme.note
            color: Theme.pencil
        }
        SlabButton {
            objectName: "cartridgeKeep"
            width: parent.width
            height: implicitHeight
            text: qsTr("Cartridge changed now")
            secondLine: waits ? qsTr("say who you are first") : qsTr("its hours count from here")
            waits: !sheet.protection.mayKeep
            onClicked: sheet.protection.keepCartridge(sheet.chosen, hours.text, basisField.text)
        }
    }
}
