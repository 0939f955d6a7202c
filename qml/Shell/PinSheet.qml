// PinSheet: the PIN of the person who was chosen, on keys for gloves; and, with `setting`, a new one.
// It opens by itself when a PIN is asked for. pin must be set.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property PinViewModel pin
    property bool setting: false

    function setOne() {
        pad.typed = "";
        setting = true;
        opened = true;
    }

    function enter() {
        if (setting) {
            pin.set(pad.typed);
            close();
        } else {
            pin.enter(pad.typed);
        }
        pad.typed = "";
    }

    z: 55
    opened: pin.asking
    title: setting ? qsTr("New PIN") : qsTr("PIN of %1").arg(pin.who)
    onClosed: {
        setting = false;
        pad.typed = "";
        pin.giveUp();
    }

    Connections {
        target: sheet.pin
        function onChanged() {
            if (!sheet.setting)
                sheet.opened = sheet.pin.asking;
        }
    }

    Column {
        width: parent.width
        spacing: Theme.gap

        KeyPad {
            id: pad
            objectName: "pinPad"
            width: parent.width
            height: implicitHeight
            digits: 8
            hidden: true
            label: sheet.setting ? qsTr("4 to 8 digits; who forgets it asks a manager") : qsTr("4 to 8 digits")
            wrong: sheet.setting ? "" : sheet.pin.wrong
        }
        SlabButton {
            objectName: "pinEnter"
            width: parent.width
            height: implicitHeight
            text: sheet.setting ? qsTr("Keep this PIN") : qsTr("It is me")
            secondLine: waits ? qsTr("needs 4 digits") : ""
            waits: pad.typed.length < 4
            onClicked: sheet.enter()
        }
    }
}
