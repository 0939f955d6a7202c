// Sending: where the work of this device is: here, on the hub, or refused and why; what goes on and
// what is in the way; pause, pictures, the hub's addresses. sync, devices: the view models; wide: two
// columns. Signals: joinAsked, exportAsked, devicesAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property SyncViewModel sync
    required property DevicesViewModel devices
    property bool wide: false
    property real undoRoom: 0  // kept free above the main act
    readonly property real actsTop: main.y
    readonly property real actsX: main.x
    readonly property real actsWidth: main.width

    implicitHeight: main.height + undoRoom + 300

    signal joinAsked
    signal exportAsked
    signal devicesAsked

    function act() {
        switch (sync.mainAct) {
        case SyncViewModel.SendNow:
            sync.sendNow();
            break;
        case SyncViewModel.GoOn:
            sync.pause(false);
            break;
        case SyncViewModel.AskAnew:
            sync.askForNewKey();
            break;
        case SyncViewModel.Join:
            page.joinAsked();
            break;
        default:
            page.exportAsked();
        }
    }

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Sending")

    component Heading: Words {
        width: parent ? parent.width : 0
        topPadding: 8
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }

    Flickable {
        id: view
        width: parent.width
        height: main.y - Theme.gap - page.undoRoom
        contentHeight: body.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Item {
            id: body
            x: Theme.gutter
            width: view.width - 2 * Theme.gutter
            height: Math.max(standing.height, page.wide ? choices.height : choices.y + choices.height)

            Column {
                id: standing
                width: page.wide ? Math.floor((parent.width - 24) / 2) : parent.width
                topPadding: Theme.gap
                bottomPadding: Theme.gap
                spacing: Theme.gap

                PaperCard {
                    objectName: "sendingState"
                    width: parent.width
                    must: page.sync.contact === SyncViewModel.Revoked || page.sync.contact === SyncViewModel.TurnedAway
                    disputed: page.sync.contact === SyncViewModel.Forked
                    dashed: page.sync.contact === SyncViewModel.NoHub
                    name: qsTr("%1 %2").arg(page.sync.head).arg(page.sync.explain)

                    Column {
                        width: parent.width
                        spacing: Theme.gap

                        Hatch {
                            width: parent.width
                            height: 44
                            visible: page.sync.contact === SyncViewModel.NoHub
                            radius: Theme.corner
                        }
                        Item {
                            width: parent.width
                            height: Math.max(shape.height, head.height)

                            StateShape {
                                id: shape
                                anchors.verticalCenter: parent.verticalCenter
                                kind: page.sync.shape
                                key: "sync"
                                size: 28
                            }
                            Words {
                                id: head
                                objectName: "sendingHead"
                                x: 40
                                width: parent.width - x
                                anchors.verticalCenter: parent.verticalCenter
                                text: page.sync.head
                                mute: true
                                bold: true
                                size: Theme.lead
                            }
                        }
                        Words {
                            width: parent.width
                            text: page.sync.explain
                            mute: true
                        }
                        Words {
                            width: parent.width
                            visible: text !== ""
                            text: page.sync.forkWords
                            mute: true
                        }
                        PlainButton {
                            objectName: "sendingJoin"
                            width: parent.width
                            height: implicitHeight
                            visible: page.sync.canJoin
                            pressable: visible
                            text: qsTr("Join a hub")
                            secondLine: qsTr("with the square code that it shows")
                            onClicked: page.joinAsked()
                        }
                    }
                }
                PaperCard {
                    width: parent.width
                    visible: page.sync.digits !== ""

                    Column {
                        width: parent.width
                        spacing: 4

                        FarDigits {
                            objectName: "sendingDigits"
                            width: parent.width
                            most: 96
                            text: page.sync.digits
                            spoken: page.sync.digitsSpoken
                        }
                        Words {
                            width: parent.width
                            text: qsTr("The manager's list of devices has to show the same six digits.")
                            color: Theme.pencil
                        }
                    }
                }
                NoteBanner {
                    objectName: "sendingTrouble"
                    width: parent.width
                    visible: page.sync.troubleWhat !== ""
                    kind: NoteBanner.Due
                    happened: page.sync.troubleWhat
                    stands: Array.from([page.sync.troubleKept, page.sync.troubleTodo]).filter(words => words !== "").join("\n")
                    details: page.sync.troubleDetails
                }
                Words {
                    objectName: "sendingNotice"
                    width: parent.width
                    visible: text !== ""
                    text: page.sync.notice
                    bold: true
                    color: Theme.oxide
                }
                Repeater {
                    model: page.sync.rows

                    PlaceRow {
                        width: standing.width
                    }
                }
                Repeater {
                    model: page.sync.facts

                    DetailLine {
                        width: standing.width
                    }
                }
            }
            Column {
                id: choices
                x: page.wide ? standing.width + 24 : 0
                y: page.wide ? 0 : standing.height
                width: standing.width
                topPadding: page.wide ? Theme.gap : 0
                bottomPadding: Theme.gap
                spacing: Theme.gap

                PlainButton {
                    objectName: "sendingPause"
                    width: parent.width
                    height: implicitHeight
                    visible: page.sync.maySend && !page.sync.paused
                    pressable: visible
                    text: qsTr("Pause")
                    secondLine: qsTr("nothing goes out or comes in until you go on")
                    iconName: "pause"
                    beside: true
                    onClicked: page.sync.pause(true)
                }
                Heading {
                    visible: page.sync.maySend
                    text: qsTr("Pictures go out and come in")
                }
                ActRow {
                    width: parent.width
                    visible: page.sync.maySend

                    PlainButton {
                        objectName: "picturesAlways"
                        text: qsTr("Always")
                        chosen: page.sync.picturesWhen === SyncViewModel.Always
                        onClicked: page.sync.choosePictures(SyncViewModel.Always)
                    }
                    PlainButton {
                        objectName: "picturesNotMetered"
                        text: qsTr("Not metered")
                        name: qsTr("Not on metered networks")
                        secondLine: page.sync.metered ? qsTr("it is metered now") : ""
                        chosen: page.sync.picturesWhen === SyncViewModel.NotMetered
                        onClicked: page.sync.choosePictures(SyncViewModel.NotMetered)
                    }
                    PlainButton {
                        objectName: "picturesNever"
                        text: qsTr("Never")
                        chosen: page.sync.picturesWhen === SyncViewModel.Never
                        onClicked: page.sync.choosePictures(SyncViewModel.Never)
                    }
                }
                FaceField {
                    id: addresses
                    objectName: "sendingAddresses"
                    width: parent.width
                    visible: page.sync.maySend
                    label: qsTr("Where the hub is")
                    text: page.sync.addresses
                    placeholder: "192.168.1.20:8740"
                    maximumLength: 400
                    onEdited: wrong = ""
                }
                PlainButton {
                    objectName: "keepAddresses"
                    width: parent.width
                    height: implicitHeight
                    visible: addresses.visible && addresses.text !== page.sync.addresses
                    pressable: visible
                    text: qsTr("Use these addresses")
                    onClicked: addresses.wrong = page.sync.keepAddresses(addresses.text)
                }
                PlainButton {
                    objectName: "sendingDevices"
                    width: parent.width
                    height: implicitHeight
                    text: qsTr("Devices")
                    secondLine: page.devices.countWords
                    iconName: "device"
                    beside: true
                    onClicked: page.devicesAsked()
                }
            }
        }
    }
    SlabButton {
        id: main
        objectName: "sendingMain"
        x: page.wide ? parent.width - width - Theme.gutter : Theme.gutter
        y: parent.height - height - Theme.gap
        width: page.wide ? Math.min(420 * Theme.textScale, parent.width - 2 * Theme.gutter) : parent.width - 2 * Theme.gutter
        height: implicitHeight
        text: page.sync.mainText
        secondLine: page.sync.mainSecond
        onClicked: page.act()
    }
}
