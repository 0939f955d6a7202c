// Protection: what is kept of one person: fit tests, cartridges and due days, each with how it stands
// and open to its sum; and "do not spray". protection: the view model; undoRoom: kept free above the
// acts. Signal: whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens
import Jambline.Job

FocusScope {
    id: page

    required property RegisterViewModel protection
    property real undoRoom: 0
    readonly property real actsTop: acts.y
    readonly property real actsX: main.x
    readonly property real actsWidth: main.width
    implicitHeight: main.height + acts.height + undoRoom + 260

    signal whoAsked

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Protection of %1").arg(protection.personName)

    Flickable {
        id: view
        width: parent.width
        height: acts.y - Theme.gap - page.undoRoom
        contentHeight: body.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: body
            x: Theme.gutter
            width: view.width - 2 * Theme.gutter
            topPadding: Theme.gap
            bottomPadding: Theme.gap
            spacing: Theme.gap

            Words {
                objectName: "protectionName"
                width: parent.width
                text: page.protection.personName
                bold: true
                size: Theme.title
                Accessible.role: Accessible.Heading
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: page.protection.personRole
                color: Theme.pencil
            }
            StandingCard {
                objectName: "flagCard"
                width: parent.width
                visible: page.protection.flagged
                title: qsTr("Do not spray")
                stateWords: qsTr("stops before the gun, with no way round")
                note: qsTr("Only a manager takes it back.")
                shape: ShapeKind.Must
                alarm: true
                pressable: visible && page.protection.mayFlag
                name: pressable ? qsTr("Do not spray. Asks whether %1 may spray again.").arg(page.protection.personName) : ""
                onClicked: flag.opened = true
            }
            Repeater {
                model: page.protection.rows

                StandingCard {
                    required property int index
                    required property string key
                    required property string spoken
                    required property bool opens
                    required title
                    required words
                    required note
                    required stateWords
                    required shape
                    required alarm

                    objectName: "registerRow" + index
                    width: body.width
                    pressable: opens
                    name: opens ? qsTr("%1. Opens the sum.").arg(spoken) : spoken
                    onClicked: {
                        if (page.protection.openSum(key))
                            rowSum.opened = true;
                    }
                }
            }
            PlainButton {
                objectName: "doNotSpray"
                width: parent.width
                height: implicitHeight
                visible: page.protection.mayFlag && !page.protection.flagged
                pressable: visible
                text: qsTr("Do not spray")
                secondLine: qsTr("stops %1 before the gun until a manager takes it back").arg(page.protection.personName)
                onClicked: flag.opened = true
            }
        }
    }
    ActRow {
        id: acts
        x: Theme.gutter
        width: parent.width - 2 * Theme.gutter
        height: implicitHeight
        y: main.y - height - Theme.gap

        PlainButton {
            objectName: "changeCartridge"
            text: qsTr("Cartridge")
            secondLine: qsTr("changed now")
            onClicked: page.protection.mayKeep ? cartridge.show() : page.whoAsked()
        }
        PlainButton {
            objectName: "setDue"
            text: qsTr("Due day")
            secondLine: qsTr("set one")
            onClicked: page.protection.mayKeep ? due.show() : page.whoAsked()
        }
    }
    SlabButton {
        id: main
        objectName: "recordFit"
        x: Theme.gutter
        y: parent.height - height - Theme.gap
        width: parent.width - 2 * Theme.gutter
        height: implicitHeight
        text: qsTr("Record a fit test")
        secondLine: waits ? (page.protection.mayKeep ? qsTr("a manager records it") : qsTr("say who you are first")) : ""
        waits: !page.protection.manager
        onRefused: {
            if (!page.protection.mayKeep)
                page.whoAsked();
        }
        onClicked: {
            page.protection.openFitTest();
            fit.show();
        }
    }
    FitTestSheet {
        id: fit
        objectName: "fitSheet"
        anchors.fill: parent
        form: page.protection.fitTest
        personName: page.protection.personName
        onSumAsked: fitSum.opened = true
    }
    CartridgeSheet {
        id: cartridge
        objectName: "cartridgeSheet"
        anchors.fill: parent
        protection: page.protection
    }
    DueSheet {
        id: due
        objectName: "dueSheet"
        anchors.fill: parent
        protection: page.protection
    }
    FlagSheet {
        id: flag
        objectName: "flagSheet"
        anchors.fill: parent
        protection: page.protection
    }
    SumSheet {
        id: rowSum
        objectName: "registerSum"
        anchors.fill: parent
        sum: page.protection.sum
    }
    SumSheet {
        id: fitSum
        objectName: "fitSum"
        z: 52
        anchors.fill: parent
        sum: page.protection.fitTest.sum
    }
}
