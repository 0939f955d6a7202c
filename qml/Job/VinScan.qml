// VinScan: a VIN out of a barcode. scan: the view model. What is read stands large with its check; it is
// used when a person says so. The camera is on only while this is open.
pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Window
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property VinScanViewModel scan
    readonly property bool inFront: opened && visible && (Window.window?.visible ?? false) && Window.visibility !== Window.Minimized
                                    && Qt.application.state !== Qt.ApplicationSuspended && Qt.application.state !== Qt.ApplicationHidden

    function use(vin: string) {
        scan.use(vin);
        close();
    }

    title: qsTr("Scan the VIN")
    onInFrontChanged: scan.front = inFront
    Component.onDestruction: scan.front = false

    PictureFiles {
        id: files
        onChosen: urls => sheet.scan.readFiles(urls)
    }

    Column {
        width: parent.width
        spacing: Theme.gap

        Rectangle {
            width: parent.width
            height: visible ? Math.min(width * 3 / 4, 340) : 0
            visible: sheet.scan.foundCount === 0 && sheet.scan.troubleWhat === ""
            color: Theme.steel
            clip: true

            VinLiveItem {
                objectName: "vinLive"
                anchors.fill: parent
                visible: sheet.scan.live
                scan: sheet.scan
                guide: true
                whole: false
                line: Theme.paper
                Accessible.role: Accessible.Graphic
                Accessible.name: qsTr("What the camera sees")
            }
        }
        Words {
            width: parent.width
            visible: sheet.scan.live && sheet.scan.foundCount === 0
            text: qsTr("Hold the barcode in the frame: at the door jamb or behind the windshield.")
            color: Theme.pencil
        }
        Row {
            width: parent.width
            visible: sheet.scan.foundCount === 0 && (sheet.scan.troubleWhat !== "" || sheet.scan.notice !== "" || sheet.scan.reading)
            spacing: 10

            StateShape {
                id: mark
                kind: sheet.scan.reading ? ShapeKind.Running : ShapeKind.Waits
                ground: Theme.paper
            }
            Column {
                width: parent.width - mark.width - 10

                Words {
                    objectName: "vinNotice"
                    width: parent.width
                    visible: text !== ""
                    text: sheet.scan.reading ? qsTr("The picture is read ...") : sheet.scan.notice
                }
                Words {
                    objectName: "vinTrouble"
                    width: parent.width
                    visible: text !== ""
                    text: sheet.scan.troubleWhat
                }
                Words {
                    width: parent.width
                    visible: sheet.scan.troubleWhat !== "" && !sheet.scan.reading
                    text: qsTr("A picture of the barcode can be read, and the VIN can be typed.")
                    color: Theme.pencil
                }
            }
        }
        Words {
            width: parent.width
            visible: sheet.scan.foundCount > 1
            text: qsTr("%1 numbers were read. Which one is on this car?").arg(sheet.scan.foundCount)
        }
        Repeater {
            model: sheet.scan.found

            PaperCard {
                id: card

                required property string vin
                required property string signs
                required property string words
                required property string years
                required property bool good
                required property string useText
                readonly property string second: good ? "" : qsTr("marked as not checked")

                width: parent ? parent.width : 0
                name: qsTr("%1. %2 %3").arg(card.signs).arg(card.words).arg(card.years)

                Column {
                    width: parent.width
                    spacing: 8

                    Words {
                        objectName: "vinRead"
                        width: parent.width
                        text: card.signs
                        bold: true
                        size: Theme.title
                        mute: true
                    }
                    Row {
                        width: parent.width
                        spacing: 10

                        StateShape {
                            id: check
                            kind: card.good ? ShapeKind.Done : ShapeKind.Waits
                            ground: Theme.paper
                        }
                        Column {
                            width: parent.width - check.width - 10

                            Words {
                                objectName: "vinWords"
                                width: parent.width
                                text: card.words
                                mute: true
                            }
                            Words {
                                width: parent.width
                                text: card.years
                                color: Theme.pencil
                                mute: true
                            }
                        }
                    }
                    SlabButton {
                        objectName: "vinUse"
                        width: parent.width
                        height: visible ? implicitHeight : 0
                        visible: sheet.scan.foundCount === 1
                        pressable: visible
                        text: card.useText
                        secondLine: card.second
                        onClicked: sheet.use(card.vin)
                    }
                    PlainButton {
                        objectName: "vinUseThis"
                        width: parent.width
                        height: visible ? implicitHeight : 0
                        visible: sheet.scan.foundCount > 1
                        pressable: visible
                        text: card.useText
                        secondLine: card.second
                        beside: false
                        onClicked: sheet.use(card.vin)
                    }
                }
            }
        }
        PlainButton {
            objectName: "vinAgain"
            visible: sheet.scan.foundCount > 0 || sheet.scan.canRestart
            pressable: visible
            width: parent.width
            height: visible ? implicitHeight : 0
            text: sheet.scan.foundCount > 0 ? qsTr("Scan again") : qsTr("Start the camera again")
            onClicked: sheet.scan.foundCount > 0 ? sheet.scan.scanAgain() : sheet.scan.restart()
        }
        PlainButton {
            objectName: "vinFile"
            width: parent.width
            text: qsTr("From a picture file")
            onClicked: files.ask()
        }
    }
}
