// FirstRun: what stands on the floor before the first car: the hatched form of a car to come, and the
// ways to a shop that is here already and to the demo shop; while the device waits to be let in, the
// digits that are compared. demo must be set. Signal: joinAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Flickable {
    id: page

    required property DemoViewModel demo
    property JoinViewModel join: null

    signal joinAsked

    readonly property bool joining: page.join?.joining ?? false
    readonly property bool waits: joining && !(page.join?.bringsShop ?? false)  // it may not write
    readonly property real reach: Math.min(width - 2 * Theme.gutter, 560)

    contentHeight: Math.max(height, stack.height + 16)
    interactive: contentHeight > height
    boundsBehavior: Flickable.StopAtBounds
    clip: interactive

    component Part: Hatch {
        wide: true

        Rectangle {
            anchors.fill: parent
            color: "transparent"
            radius: Theme.corner
            border.width: Theme.line
            border.color: Theme.ink
        }
    }

    Column {
        id: stack
        x: (page.width - page.reach) / 2
        y: 8
        width: page.reach
        spacing: 16

        PaperCard {
            objectName: "waitsToBeLetIn"
            visible: page.waits
            width: parent.width
            name: qsTr("This device asks to be let in, digits %1").arg(page.join?.digitsSpoken ?? "")

            Column {
                width: parent.width
                spacing: Theme.gap

                Item {
                    width: parent.width
                    height: Math.max(mark.height, asks.height)

                    StateShape {
                        id: mark
                        anchors.verticalCenter: parent.verticalCenter
                        kind: ShapeKind.Waits
                        size: 26
                    }
                    Words {
                        id: asks
                        x: 38
                        width: parent.width - x
                        anchors.verticalCenter: parent.verticalCenter
                        text: qsTr("This device asks to be let in.")
                        mute: true
                        bold: true
                        size: Theme.lead
                    }
                }
                FarDigits {
                    objectName: "floorDigits"
                    width: parent.width
                    most: 96
                    text: page.join?.digits ?? ""
                    spoken: page.join?.digitsSpoken ?? ""
                    mute: true
                }
                Words {
                    width: parent.width
                    text: page.join?.compareWords ?? ""
                    mute: true
                    color: Theme.pencil
                }
            }
        }
        TapeLabel {
            visible: !page.waits
            width: Math.min(parent.width, implicitWidth + 60)
            text: qsTr("Your car goes here")
            lift: 60
        }
        Item {
            visible: !page.waits
            width: parent.width
            height: 230
            Accessible.ignored: true

            Item {
                width: 190
                height: parent.height
                anchors.horizontalCenter: parent.horizontalCenter

                Part { x: 55; width: 80; height: 18 }
                Part { x: 58; y: 24; width: 74; height: 54 }
                Part { x: 62; y: 104; width: 66; height: 56 }
                Part { x: 58; y: 166; width: 74; height: 38 }
                Part { x: 55; y: 210; width: 80; height: 18 }
                Part { x: 10; y: 28; width: 40; height: 52 }
                Part { x: 10; y: 84; width: 40; height: 60 }
                Part { x: 10; y: 148; width: 40; height: 54 }
                Part { x: 140; y: 28; width: 40; height: 52 }
                Part { x: 140; y: 84; width: 40; height: 60 }
                Part { x: 140; y: 148; width: 40; height: 54 }
            }
        }
        Words {
            visible: !page.waits
            width: parent.width
            text: qsTr("No car is in the shop yet.")
            bold: true
            size: Theme.lead
        }
        Words {
            visible: !page.waits
            width: parent.width
            text: qsTr("Open a car: plate, color, body, panels. It takes about a minute. All of it stays on this device.")
            color: Theme.pencil
        }
        Words {
            visible: text !== ""
            width: parent.width
            text: page.demo.note
            bold: true
        }
        PlainButton {
            objectName: "joinShop"
            visible: (page.join?.possible ?? false) && !page.demo.isDemo
            pressable: visible
            width: parent.width
            height: implicitHeight
            text: page.joining ? qsTr("Compare the digits") : qsTr("Join a shop that is here already")
            secondLine: page.joining ? qsTr("or stop asking") : qsTr("with the square code of its manager or its hub")
            onClicked: page.joinAsked()
        }
        PlainButton {
            objectName: "tryDemo"
            visible: !page.demo.isDemo && !page.demo.running && !page.waits
            pressable: visible
            width: parent.width
            height: implicitHeight
            text: qsTr("Try the demo shop")
            secondLine: qsTr("invented cars, thrown away when closed")
            onClicked: page.demo.open()
        }
    }
}
