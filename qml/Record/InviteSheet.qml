// InviteSheet: a code for one new device: the square one for its camera, the line below it to be sent,
// and how long it is good. devices: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property DevicesViewModel devices
    property bool copied: false

    title: qsTr("Invite a device")
    Connections {
        target: sheet.devices
        // Who asks stands behind the sheet.
        function onSomeoneAsked() { sheet.opened = false; }
    }
    onClosed: {
        copied = false;
        devices.dropInvitation();
    }

    Column {
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gutter

        Words {
            width: parent.width
            text: sheet.devices.inviteTrouble !== "" ? sheet.devices.inviteTrouble
                : sheet.devices.invitation === "" ? qsTr("The hub is asked for a code.")
                : qsTr("On the new device: Join a shop that is here already, and hold this before its camera.")
        }
        JoinCodeItem {
            objectName: "inviteCode"
            width: Math.min(parent.width, 360)
            height: visible ? width : 0
            visible: sheet.devices.invitation !== "" && !sheet.devices.inviteOver && drawn
            anchors.horizontalCenter: parent.horizontalCenter
            text: sheet.devices.invitation
            Accessible.role: Accessible.Graphic
            Accessible.name: qsTr("Square code of the invitation")
        }
        Words {
            objectName: "inviteLeft"
            width: parent.width
            visible: text !== ""
            text: sheet.devices.inviteWords
            bold: true
        }
        Words {
            objectName: "inviteText"
            width: parent.width
            visible: !sheet.devices.inviteOver && text !== ""
            text: sheet.devices.invitation
            size: Theme.note
            color: Theme.pencil
            wrapMode: Text.WrapAnywhere
        }
        PlainButton {
            objectName: "inviteCopy"
            width: parent.width
            height: implicitHeight
            visible: sheet.devices.invitation !== "" && !sheet.devices.inviteOver
            pressable: visible
            text: sheet.copied ? qsTr("Copied") : qsTr("Copy the line")
            onClicked: {
                sheet.devices.copyInvitation();
                sheet.copied = true;
            }
        }
        Words {
            width: parent.width
            visible: sheet.devices.invitation !== "" && !sheet.devices.inviteOver
            text: qsTr("Whoever has the code may ask. Nobody is in before you have compared the digits.")
            size: Theme.note
            color: Theme.pencil
        }
        SlabButton {
            objectName: "inviteAgain"
            width: parent.width
            height: implicitHeight
            visible: sheet.devices.inviteOver || sheet.devices.inviteTrouble !== ""
            pressable: visible
            text: qsTr("Ask for a new code")
            onClicked: {
                sheet.copied = false;
                sheet.devices.invite();
            }
        }
    }
}
