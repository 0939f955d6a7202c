// DeviceSheet: one device of the shop: what it is, what it is called, whether its folder was copied;
// a manager ends it when it is lost, which cannot be taken back and says so. devices: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property DevicesViewModel devices
    property bool ending: false

    title: devices.deviceName
    onClosed: {
        ending = false;
        devices.open("");
    }

    Column {
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gutter

        Words {
            objectName: "deviceWords"
            width: parent.width
            text: sheet.devices.deviceWords
        }
        Words {
            width: parent.width
            visible: text !== ""
            text: sheet.devices.deviceSeen
            color: Theme.pencil
        }
        NoteBanner {
            objectName: "deviceFork"
            width: parent.width
            visible: sheet.devices.deviceFork !== ""
            kind: NoteBanner.Disputed
            happened: qsTr("Two devices wrote under this name.")
            stands: sheet.devices.deviceFork
        }
        FaceField {
            id: field
            objectName: "deviceName"
            width: parent.width
            visible: sheet.devices.mayManage && !sheet.ending
            label: qsTr("Name")
            text: sheet.devices.deviceName
            maximumLength: 40
        }
        SlabButton {
            objectName: "keepDeviceName"
            width: parent.width
            height: implicitHeight
            visible: field.visible
            pressable: visible
            text: qsTr("Keep this name")
            secondLine: field.text.trim() === "" ? qsTr("needs a name")
                : field.text.trim() === sheet.devices.deviceName ? qsTr("nothing is changed") : ""
            waits: secondLine !== ""
            onRefused: field.focusField()
            onClicked: sheet.devices.rename(field.text)
        }
        PlainButton {
            objectName: "deviceLost"
            width: parent.width
            height: implicitHeight
            visible: sheet.devices.mayManage && !sheet.devices.deviceOwn && !sheet.devices.deviceEnded && !sheet.ending
            pressable: visible
            text: qsTr("It is lost, or not ours any more")
            secondLine: qsTr("asks once more")
            onClicked: sheet.ending = true
        }
        Words {
            width: parent.width
            visible: sheet.ending
            text: qsTr("This cannot be taken back. From now on %1 gets nothing more of the shop, and what it writes after its last entry here does not count until you have looked through it. What it wrote before stays.").arg(sheet.devices.deviceName)
            bold: true
        }
        Words {
            width: parent.width
            visible: sheet.ending
            text: qsTr("It does not erase what is on that device already. When it is found, it can be let in again under a new name.")
        }
        SlabButton {
            objectName: "deviceEndSure"
            width: parent.width
            height: implicitHeight
            visible: sheet.ending
            pressable: visible
            text: qsTr("End %1 for good").arg(sheet.devices.deviceName)
            onClicked: {
                sheet.devices.endMembership();
                sheet.close();
            }
        }
        PlainButton {
            objectName: "deviceEndNot"
            width: parent.width
            height: implicitHeight
            visible: sheet.ending
            pressable: visible
            text: qsTr("No, leave it")
            onClicked: sheet.ending = false
        }
        Words {
            width: parent.width
            visible: text !== ""
            text: sheet.devices.whyNot
            color: Theme.pencil
        }
    }
}
