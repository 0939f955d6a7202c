// CheckIn: how the car came, and who signs for it. checkIn: the view model; wide: odometer left, the
// rest in a pane right. Signals: whoAsked, pictureAsked, backAsked: it is kept and signed.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Item {
    id: page

    required property CheckInViewModel checkIn
    property bool wide: false
    property real undoRoom: 0  // kept free above the main act
    readonly property real actsTop: acts.y
    readonly property real actsX: acts.x
    readonly property real actsWidth: acts.width
    readonly property real paneWidth: wide ? Math.min(480, width / 2) : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth

    signal whoAsked
    signal pictureAsked

    implicitHeight: acts.height + undoRoom + 220
    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Check-in")

    Connections {
        target: page.checkIn
        function onSignatureKept() { signing.close(); }
    }

    component Title: Words {
        width: parent ? parent.width : 0
        bold: true
        size: Theme.note
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }

    Flickable {
        id: view
        width: page.wide ? page.paneX : parent.width
        height: page.wide ? parent.height : acts.y - Theme.gap - page.undoRoom
        contentHeight: body.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: body
            x: Theme.gutter
            width: view.width - 2 * Theme.gutter
            topPadding: 4
            bottomPadding: Theme.gap
            spacing: Theme.gap

            Words {
                width: parent.width
                text: qsTr("Check-in")
                bold: true
                size: Theme.screen
                Accessible.role: Accessible.Heading
            }
            FactRow {
                objectName: "odometerRow"
                width: parent.width
                visible: !page.wide
                pressable: visible
                title: qsTr("Odometer")
                words: page.checkIn.odometerWords
                shape: page.checkIn.odometerSaid ? ShapeKind.Done : ShapeKind.NotYet
                onClicked: typing.opened = true
            }
            Item {
                id: inline
                visible: page.wide
                width: parent.width
                height: page.wide ? odometer.height : 0
            }
            Item {
                id: below
                visible: !page.wide
                width: parent.width
                height: rest.height
            }
        }
    }
    Flickable {
        visible: page.wide
        x: page.paneX
        width: page.paneWidth
        height: acts.y - Theme.gap - page.undoRoom
        contentHeight: besides.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Item {
            id: besides
            width: parent.width
            height: rest.height + Theme.gap
        }
    }
    Column {
        id: rest
        parent: page.wide ? besides : below
        width: parent.width
        topPadding: 4
        spacing: Theme.gap

        WordChips {
            width: parent.width
            title: page.checkIn.fuelTitle
            words: page.checkIn.fuels
            chosen: page.checkIn.fuel
            key: "fuel"
            onPicked: row => page.checkIn.sayFuel(row)
        }
        WordChips {
            width: parent.width
            title: qsTr("Keys handed over")
            words: page.checkIn.keyCounts
            chosen: page.checkIn.keys
            key: "keys"
            onPicked: row => page.checkIn.sayKeys(row)
        }
        Title { text: qsTr("Warning lamps lit (none chosen: none)") }
        ChoiceFlow {
            width: parent.width
            question: qsTr("Warning lamp")
            model: page.checkIn.lamps
            onPicked: key => page.checkIn.turnLamp(key)
        }
        WordChips {
            width: parent.width
            visible: page.checkIn.hasPack
            title: qsTr("Battery pack, as found")
            words: page.checkIn.packs
            chosen: page.checkIn.pack
            key: "pack"
            onPicked: row => page.checkIn.sayPack(row)
        }
        Words {
            width: parent.width
            visible: page.checkIn.hasPack
            text: page.checkIn.packCaution
            size: Theme.note
            bold: true
        }
        FaceField {
            objectName: "oldDamage"
            width: parent.width
            label: qsTr("Old damage, not of this job")
            placeholder: qsTr("where and what")
            maximumLength: 180
            text: page.checkIn.damage
            onEdited: words => page.checkIn.damage = words
        }
        FactRow {
            objectName: "checkInPictures"
            width: parent.width
            title: qsTr("Pictures of how it came")
            words: page.checkIn.picturesWords
            shape: page.checkIn.picturesMissing ? ShapeKind.NotYet : ShapeKind.Done
            pressable: true
            onClicked: page.pictureAsked()
        }
        Words {
            objectName: "checkInSigned"
            width: parent.width
            visible: text !== ""
            text: page.checkIn.signedWords
            bold: true
            color: page.checkIn.signedBefore ? Theme.oxide : Theme.ink
        }
    }
    Column {
        id: acts
        x: page.paneX
        width: page.paneWidth
        y: parent.height - height - Theme.gap

        SlabButton {
            objectName: "checkInMain"
            width: parent.width
            height: implicitHeight
            visible: page.checkIn.mainAct !== CheckInViewModel.None
            pressable: visible
            text: page.checkIn.mainText
            secondLine: page.checkIn.mainSecond
            waits: page.checkIn.mainWaits
            onRefused: {
                if (!page.checkIn.hasPerson)
                    page.whoAsked();
            }
            onClicked: {
                if (page.checkIn.mainAct === CheckInViewModel.Sign)
                    signing.show();
                else
                    page.checkIn.keep();
            }
        }
    }
    Sheet {
        id: typing
        anchors.fill: parent
        title: qsTr("Odometer")

        Column {
            width: parent.width
            spacing: Theme.gap
            bottomPadding: Theme.gap

            Item {
                id: inSheet
                width: parent.width
                height: page.wide ? 0 : odometer.height
            }
            SlabButton {
                objectName: "odometerDone"
                width: parent.width
                height: implicitHeight
                text: page.checkIn.odometerWords
                secondLine: qsTr("stands in the check-in when it is kept")
                waits: !page.checkIn.odometerSaid
                onClicked: typing.close()
            }
        }
    }
    Column {
        id: odometer
        parent: page.wide ? inline : inSheet
        width: parent.width
        spacing: Theme.gap

        KeyPad {
            id: pad
            objectName: "odometerPad"
            width: Math.min(parent.width, 420)
            label: page.checkIn.unread ? qsTr("Odometer, cannot be read") : qsTr("Odometer")
            digits: 7
            typed: page.checkIn.odometer
            unitText: page.checkIn.unit
            unitKey: page.checkIn.otherUnit
            onTypedChanged: page.checkIn.odometer = typed
            onUnitPressed: page.checkIn.turnUnit()

            Connections {
                target: page.checkIn
                function onChanged() {
                    if (pad.typed !== page.checkIn.odometer)
                        pad.typed = page.checkIn.odometer;
                }
            }
        }
        PlainButton {
            objectName: "odometerUnread"
            width: Math.min(parent.width, Math.max(200, implicitWidth))
            text: qsTr("Cannot be read")
            chosen: page.checkIn.unread
            onClicked: page.checkIn.sayUnread()
        }
    }
    SignatureSheet {
        id: signing
        anchors.fill: parent
        statement: [qsTr("The car came as it stands here:"), page.checkIn.rowWords]
        onDone: (strokes, signer) => page.checkIn.sign(strokes, signer)
    }
}
