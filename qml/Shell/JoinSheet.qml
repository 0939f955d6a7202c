// JoinSheet: how this device comes to a shop's hub: the square code by the camera, a picture or the
// typed line; then six digits as large as they fit, until somebody has compared them. join: the view
// model. show() opens it. The camera is on only while a code is looked for.
pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Window
import Jambline.Theme
import Jambline.Screens
import Jambline.Job

Sheet {
    id: sheet

    required property JoinViewModel join
    readonly property int step: join.step
    readonly property bool looks: opened && visible && step === JoinViewModel.Read
        && (Window.window?.visible ?? false) && Window.visibility !== Window.Minimized
        && Qt.application.state !== Qt.ApplicationSuspended && Qt.application.state !== Qt.ApplicationHidden

    function show() {
        join.open();
        opened = true;
    }

    title: step === JoinViewModel.Compare ? qsTr("Compare the digits") : qsTr("Join a hub")
    onLooksChanged: join.scan.front = looks
    Component.onDestruction: join.scan.front = false

    PictureFiles {
        id: files
        onChosen: urls => sheet.join.scan.readFiles(urls)
    }

    component Said: Words {
        width: parent ? parent.width : 0
        visible: text !== ""
    }

    Column {
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gutter

        // Read: the code.
        Said {
            visible: sheet.step === JoinViewModel.Read
            text: qsTr("A manager's device shows a square code under Devices, Invite a device; the hub itself shows one for a shop that comes to it.")
        }
        Rectangle {
            width: parent.width
            height: visible ? Math.min(width * 3 / 4, 320) : 0
            visible: sheet.step === JoinViewModel.Read && sheet.join.scan.troubleWhat === ""
            color: Theme.steel
            clip: true

            JoinLiveItem {
                objectName: "joinLive"
                anchors.fill: parent
                visible: sheet.join.scan.live
                scan: sheet.join.scan
                whole: false
                line: Theme.paper
                Accessible.role: Accessible.Graphic
                Accessible.name: qsTr("What the camera sees")
            }
        }
        Said {
            objectName: "joinNotice"
            visible: sheet.step === JoinViewModel.Read && text !== ""
            text: sheet.join.scan.reading ? qsTr("The picture is read.") : sheet.join.scan.notice !== "" ? sheet.join.scan.notice : sheet.join.scan.troubleWhat
            bold: true
        }
        ActRow {
            width: parent.width
            visible: sheet.step === JoinViewModel.Read

            PlainButton {
                objectName: "joinRestart"
                visible: sheet.join.scan.canRestart
                pressable: visible
                text: qsTr("Start the camera again")
                onClicked: sheet.join.scan.restart()
            }
            PlainButton {
                objectName: "joinFile"
                text: qsTr("From a picture file")
                onClicked: files.ask()
            }
        }
        FaceField {
            id: line
            objectName: "joinLine"
            width: parent.width
            visible: sheet.step === JoinViewModel.Read
            label: qsTr("Or the line below the code")
            placeholder: "jambline:1"
            text: sheet.join.typed
            wrong: sheet.join.wrong
            maximumLength: 600
            onEdited: text => sheet.join.typed = text
            onAccepted: sheet.join.take()
        }
        SlabButton {
            objectName: "joinTake"
            width: parent.width
            height: implicitHeight
            visible: sheet.step === JoinViewModel.Read
            pressable: visible
            text: qsTr("Use this line")
            secondLine: waits ? qsTr("needs a code") : ""
            waits: sheet.join.typed.trim() === ""
            onRefused: line.focusField()
            onClicked: sheet.join.take()
        }

        // Ask: what the code names, and what will happen.
        PaperCard {
            width: parent.width
            visible: sheet.step === JoinViewModel.Ask
            name: qsTr("%1. %2").arg(sheet.join.hubWords).arg(sheet.join.whatHappens)

            Column {
                width: parent.width
                spacing: Theme.gap

                Words {
                    objectName: "joinHub"
                    width: parent.width
                    text: sheet.join.hubWords
                    mute: true
                    bold: true
                    wrapMode: Text.WrapAtWordBoundaryOrAnywhere
                }
                Words {
                    width: parent.width
                    text: sheet.join.whatHappens
                    mute: true
                }
            }
        }
        NoteBanner {
            objectName: "joinTrouble"
            width: parent.width
            visible: sheet.join.troubleWhat !== ""
            kind: NoteBanner.Due
            happened: sheet.join.troubleWhat
            stands: Array.from([sheet.join.troubleKept, sheet.join.troubleTodo]).filter(words => words !== "").join("\n")
        }
        SlabButton {
            objectName: "joinAsk"
            width: parent.width
            height: implicitHeight
            visible: sheet.step === JoinViewModel.Ask
            pressable: visible
            text: qsTr("Ask to be let in")
            onClicked: sheet.join.ask()
        }
        PlainButton {
            objectName: "joinOther"
            width: parent.width
            height: implicitHeight
            visible: sheet.step === JoinViewModel.Ask
            pressable: visible
            text: qsTr("Another code")
            onClicked: sheet.join.another()
        }

        // Asking, then Compare.
        Row {
            width: parent.width
            visible: sheet.step === JoinViewModel.Asking || sheet.step === JoinViewModel.Compare || sheet.step === JoinViewModel.In
                || sheet.step === JoinViewModel.TurnedAway
            spacing: 10

            StateShape {
                id: mark
                kind: sheet.step === JoinViewModel.In ? ShapeKind.Done : sheet.step === JoinViewModel.TurnedAway ? ShapeKind.Must
                    : sheet.step === JoinViewModel.Asking ? ShapeKind.Running : ShapeKind.Waits
                ground: Theme.paper
            }
            Words {
                objectName: "joinState"
                width: parent.width - mark.width - 10
                text: sheet.step === JoinViewModel.In ? qsTr("This device is in.")
                    : sheet.step === JoinViewModel.TurnedAway ? qsTr("This device was not let in. The code was used or is over, or a manager turned it away.")
                    : sheet.step === JoinViewModel.Asking ? qsTr("The hub is asked.") : sheet.join.compareWords
                bold: true
            }
        }
        FarDigits {
            objectName: "joinDigits"
            width: parent.width
            visible: sheet.step === JoinViewModel.Compare
            text: sheet.join.digits
            spoken: sheet.join.digitsSpoken
        }
        Said {
            visible: sheet.step === JoinViewModel.Compare && !sheet.join.bringsShop
            text: qsTr("This screen goes on by itself when the manager has let this device in.")
            color: Theme.pencil
        }
        SlabButton {
            objectName: "joinConfirm"
            width: parent.width
            height: implicitHeight
            visible: sheet.step === JoinViewModel.Compare && sheet.join.bringsShop
            pressable: visible
            text: qsTr("Same digits: take this hub in")
            secondLine: waits ? qsTr("a manager does this: choose who you are") : ""
            waits: !sheet.join.mayConfirm
            onClicked: sheet.join.confirm()
        }
        PlainButton {
            objectName: "joinGiveUp"
            width: parent.width
            height: implicitHeight
            visible: sheet.step === JoinViewModel.Compare || sheet.step === JoinViewModel.Asking
            pressable: visible
            text: sheet.step === JoinViewModel.Compare ? qsTr("Other digits, or not now: stop") : qsTr("Stop")
            onClicked: sheet.join.giveUp()
        }

        // The end.
        SlabButton {
            objectName: "joinDone"
            width: parent.width
            height: implicitHeight
            visible: sheet.step === JoinViewModel.In || sheet.step === JoinViewModel.TurnedAway
            pressable: visible
            text: sheet.step === JoinViewModel.In ? qsTr("To work") : qsTr("Use another code")
            onClicked: sheet.step === JoinViewModel.In ? sheet.close() : sheet.join.another()
        }
    }
}
