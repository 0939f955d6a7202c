// Devices: who of the shop's devices is in, who asks to be, whose later work waits to be looked
// through. Acts are a manager's on a manager's device; others read. devices: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property DevicesViewModel devices
    property bool wide: false
    property real undoRoom: 0  // kept free above the main act
    readonly property real actsTop: main.visible ? main.y : height
    readonly property real actsX: main.x
    readonly property real actsWidth: main.width

    implicitHeight: main.height + undoRoom + 300

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Devices")

    Component.onCompleted: devices.setFront(true)
    Component.onDestruction: devices.setFront(false)

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
        height: (main.visible ? main.y - Theme.gap : parent.height) - page.undoRoom
        contentHeight: body.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Item {
            id: body

            readonly property bool split: page.wide && asks.visible

            x: Theme.gutter
            width: view.width - 2 * Theme.gutter
            height: split ? Math.max(asks.height, list.height) : list.y + list.height

            Column {
                id: asks
                width: body.split ? Math.floor((parent.width - 24) / 2) : parent.width
                visible: page.devices.waitingCount > 0 || page.devices.keptCount > 0
                topPadding: Theme.gap
                spacing: Theme.gap

                Heading {
                    visible: page.devices.waitingCount > 0
                    text: qsTr("Asks to be let in")
                }
                Repeater {
                    model: page.devices.waiting

                    WaitingCard {
                        required property string key
                        required property int index
                        required property var model

                        objectName: "waiting" + index
                        width: asks.width
                        devices: page.devices
                        device: key
                        called: model.name
                    }
                }
                Heading {
                    visible: page.devices.keptCount > 0
                    text: qsTr("Kept apart on the hub")
                }
                Repeater {
                    model: page.devices.kept

                    PlainButton {
                        required property string key
                        required property string words
                        required property int index
                        required property var model

                        objectName: "kept" + index
                        width: asks.width
                        height: implicitHeight
                        text: qsTr("Look through the work of %1").arg(model.name)
                        secondLine: words
                        onClicked: {
                            page.devices.lookThrough(key);
                            kept.opened = true;
                        }
                    }
                }
            }
            Column {
                id: list
                x: body.split ? asks.width + 24 : 0
                y: asks.visible && !body.split ? asks.height : 0
                width: body.split ? asks.width : Math.min(parent.width, 920)
                topPadding: Theme.gap
                bottomPadding: Theme.gap
                spacing: Theme.gap

                Heading {
                    objectName: "devicesCount"
                    text: page.devices.countWords
                }
                Repeater {
                    model: page.devices.devices

                    DeviceRow {
                        required property string key
                        required property int index
                        required property var model

                        objectName: "device" + index
                        width: list.width
                        called: model.name
                        onClicked: {
                            page.devices.open(key);
                            one.opened = true;
                        }
                    }
                }
                Words {
                    objectName: "devicesWhyNot"
                    width: parent.width
                    visible: text !== ""
                    text: page.devices.whyNot
                    color: Theme.pencil
                }
                Words {
                    width: parent.width
                    visible: text !== ""
                    text: page.devices.troubleWords
                    bold: true
                    color: Theme.ochreInk
                }
                Words {
                    width: parent.width
                    visible: !page.devices.hasHub
                    text: qsTr("There is no hub yet: other devices come in through one.")
                    color: Theme.pencil
                }
            }
        }
    }
    SlabButton {
        id: main
        objectName: "devicesInvite"
        x: page.wide ? parent.width - width - Theme.gutter : Theme.gutter
        y: parent.height - height - Theme.gap
        width: page.wide ? Math.min(420 * Theme.textScale, parent.width - 2 * Theme.gutter) : parent.width - 2 * Theme.gutter
        height: implicitHeight
        visible: page.devices.mayInvite
        pressable: visible
        text: qsTr("Invite a device")
        onClicked: {
            page.devices.invite();
            invite.opened = true;
        }
    }
    DeviceSheet {
        id: one
        objectName: "deviceSheet"
        anchors.fill: parent
        devices: page.devices
        side: page.wide
    }
    InviteSheet {
        id: invite
        objectName: "inviteSheet"
        anchors.fill: parent
        devices: page.devices
        side: page.wide
    }
    KeptSheet {
        id: kept
        objectName: "keptSheet"
        anchors.fill: parent
        devices: page.devices
        side: page.wide
    }
}
