// BundleSheet: the evidence bundle of the car: what goes in, where to, the shop's fingerprint to be
// read over the phone, and how anybody checks the file. bundle: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property BundleViewModel bundle

    title: qsTr("Bundle")

    Connections {
        target: sheet.bundle
        function onAsked() {
            sheet.opened = true;
        }
    }

    Column {
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gutter

        Words {
            objectName: "bundleInside"
            width: parent.width
            text: sheet.bundle.insideWords
        }
        Words {
            width: parent.width
            text: qsTr("Names and hours stand in what the devices signed and cannot be left out. For one without them write a report.")
            color: Theme.pencil
        }
        PaperCard {
            width: parent.width
            name: qsTr("The shop's fingerprint: %1").arg(sheet.bundle.spoken)

            Column {
                width: parent.width
                spacing: 4

                Words {
                    width: parent.width
                    text: qsTr("The shop's fingerprint, to be read over the phone")
                    mute: true
                    size: Theme.note
                    color: Theme.pencil
                }
                Words {
                    objectName: "bundleFingerprint"
                    width: parent.width
                    text: sheet.bundle.fingerprint
                    mute: true
                    bold: true
                    size: Theme.lead
                }
            }
        }
        PaperPlace {
            id: where
            width: parent.width
            label: qsTr("Folder for the bundle")
            place: sheet.bundle.place
        }
        PaperRunCard {
            width: parent.width
            run: sheet.bundle.run
        }
        Column {
            width: parent.width
            visible: sheet.bundle.check !== ""
            spacing: 4

            Words {
                width: parent.width
                text: qsTr("Check it yourself, with the program that is in it:")
            }
            Words {
                objectName: "bundleCheck"
                width: parent.width
                text: sheet.bundle.check
                bold: true
                wrapMode: Text.WrapAtWordBoundaryOrAnywhere
            }
        }
        PlainButton {
            objectName: "bundleWithout"
            visible: sheet.bundle.picturesMissing
            pressable: visible && !sheet.bundle.run.busy
            width: parent.width
            height: implicitHeight
            text: qsTr("Write it without these pictures")
            secondLine: qsTr("its check says which are missing")
            onClicked: sheet.bundle.write(where.place, true)
        }
        SlabButton {
            objectName: "bundleWrite"
            width: parent.width
            height: implicitHeight
            text: qsTr("Make the bundle")
            secondLine: sheet.bundle.run.busy ? qsTr("it is being written") : qsTr("one ZIP that anybody can check")
            waits: sheet.bundle.run.busy
            onClicked: sheet.bundle.write(where.place, false)
        }
    }
}
