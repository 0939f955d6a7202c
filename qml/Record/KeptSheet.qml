// KeptSheet: what an ended device wrote after its end, in words; it is taken into the shop's record or
// left apart. devices: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property DevicesViewModel devices

    title: qsTr("Work of %1").arg(devices.lookedName)

    Connections {
        target: sheet.devices
        function onSettled() {
            sheet.close();
        }
        function onLookedChanged() {
            if (sheet.devices.looked === "")
                sheet.close();
        }
    }

    Column {
        id: body
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gutter

        Words {
            objectName: "keptWords"
            width: parent.width
            text: sheet.devices.lookedWords
            bold: true
        }
        Words {
            width: parent.width
            visible: sheet.devices.lookedHere
            text: qsTr("Taken over, they stand in the time line as said again by this device, with who did it and when. Left where they are, they stay apart on the hub.")
            color: Theme.pencil
        }
        SlabButton {
            objectName: "keptTake"
            width: parent.width
            height: implicitHeight
            visible: sheet.devices.lookedHere
            pressable: visible
            text: qsTr("Take over")
            secondLine: qsTr("into the shop's record")
            onClicked: sheet.devices.takeOver()
        }
        PlainButton {
            objectName: "keptLeave"
            width: parent.width
            height: implicitHeight
            visible: sheet.devices.lookedHere
            pressable: visible
            text: qsTr("Leave it")
            secondLine: qsTr("nothing is asked about it any more")
            onClicked: sheet.devices.leaveKept()
        }
        Repeater {
            model: sheet.devices.lookedEntries

            PaperCard {
                id: one

                required property string words
                required property string line

                width: body.width
                quiet: true
                name: qsTr("%1, %2").arg(words).arg(line)

                Column {
                    width: parent.width
                    spacing: 2

                    Words {
                        width: parent.width
                        text: one.words
                        mute: true
                    }
                    Words {
                        width: parent.width
                        text: one.line
                        mute: true
                        size: Theme.note
                        color: Theme.pencil
                    }
                }
            }
        }
    }
}
