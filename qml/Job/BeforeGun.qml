// BeforeGun: what is answered before the gun is picked up: where, through what one breathes, what is
// sprayed; what the registers know; what is answered now. check, climate: the view models. wide: the
// questions and the main act in a pane right.
// Signals: whoAsked; mixAsked: a mix is logged first; started(booth): the spraying runs.
pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Jambline.Theme
import Jambline.Screens

Item {
    id: page

    required property BeforeGunViewModel check
    required property ClimateViewModel climate
    property bool wide: false
    property real undoRoom: 0  // kept free above the main act
    // What is asked and the caution have the phone's room; what was done before waits on the car.
    readonly property bool noUndo: !wide
    readonly property real actsTop: foot.y
    readonly property real actsX: foot.x
    readonly property real actsWidth: foot.width
    readonly property real paneWidth: wide ? Math.min(480, width / 2) : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth
    // Large words, or a row above the acts: the caution goes with the questions, the main act stays.
    readonly property bool tall: (Theme.textScale > 1.2 || undoRoom > 0) && !wide

    readonly property bool stopped: check.stopped

    signal whoAsked
    signal mixAsked
    signal started(string booth)

    implicitHeight: foot.height + undoRoom + 220
    Accessible.role: Accessible.Pane
    Accessible.name: check.title
    onStoppedChanged: if (stopped)
        view.contentY = 0

    Connections {
        target: page.check
        function onStarted(booth) { page.started(booth); }
        function onRespiratorAsked() { respirator.opened = true; }
        function onAirAsked() { air.show(); }
    }
    Cautions {
        id: cautions
    }

    Flickable {
        id: view
        width: page.wide ? page.paneX : parent.width
        height: page.wide ? parent.height : foot.y - Theme.gap - page.undoRoom
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

            Flow {
                width: parent.width
                spacing: Theme.gap

                Words {
                    id: title
                    width: Math.min(natural, parent.width)
                    text: page.check.title
                    bold: true
                    size: Theme.screen
                    Accessible.role: Accessible.Heading
                }
                Words {
                    objectName: "gunLeft"
                    width: Math.min(natural, parent.width)
                    height: Math.max(implicitHeight, title.height)
                    verticalAlignment: Text.AlignVCenter
                    text: page.check.leftWords
                    bold: true
                    size: Theme.lead
                }
            }
            GunCars {
                width: parent.width
                check: page.check
            }
            ActRow {
                width: parent.width
                visible: page.check.here

                PlainButton {
                    objectName: "gunBooth"
                    beside: false
                    text: page.check.boothWords === "" ? qsTr("Which booth") : page.check.boothWords
                    secondLine: page.check.boothNote
                    onClicked: booth.opened = true
                }
                PlainButton {
                    objectName: "gunRespirator"
                    beside: false
                    text: page.check.respiratorWords === "" ? qsTr("Which one") : page.check.respiratorWords
                    secondLine: qsTr("respirator")
                    onClicked: respirator.opened = true
                }
                PlainButton {
                    objectName: "gunProduct"
                    beside: false
                    text: page.check.activated ? qsTr("Activated") : qsTr("Not activated")
                    secondLine: qsTr("product")
                    name: qsTr("Product, %1").arg(page.check.productWords)
                    onClicked: product.opened = true
                }
            }
            Words {
                objectName: "gunReported"
                width: parent.width
                visible: text !== ""
                text: page.check.reportedWords
                bold: true
            }
            GunStop {
                width: parent.width
                check: page.check
            }
            Item {
                id: below
                visible: !page.wide
                width: parent.width
                height: asked.height
            }
            Item {
                id: tail
                visible: page.tall
                width: parent.width
                height: outside.height
            }
            GunKnown {
                width: parent.width
                check: page.check
            }
            GunShoulds {
                width: parent.width
                check: page.check
            }
        }
    }
    Flickable {
        id: pane
        visible: page.wide
        x: page.paneX
        width: page.paneWidth
        height: foot.y - Theme.gap - page.undoRoom
        contentHeight: besides.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Item {
            id: besides
            width: parent.width
            height: asked.height + Theme.gap
        }
    }
    GridLayout {
        id: asked
        parent: page.wide ? besides : below
        width: parent.width
        columns: Theme.textScale > 1.2 || width < 300 ? 1 : 2
        columnSpacing: Theme.gap
        rowSpacing: Theme.gap

        Repeater {
            id: tiles
            model: page.check.asked

            GunTile {
                required property int index
                required property string key
                readonly property bool alone: asked.columns === 2 && index === tiles.count - 1 && index % 2 === 0

                objectName: "gun " + key
                Layout.columnSpan: alone ? 2 : 1
                Layout.preferredWidth: alone ? asked.width : (asked.width - (asked.columns - 1) * asked.columnSpacing) / asked.columns
                Layout.fillHeight: true
                Layout.minimumHeight: Theme.desk ? 64 : 88
                holdable: true
                onClicked: page.check.press(key)
                onHeld: page.check.openItem(key)
            }
        }
    }
    Column {
        id: outside
        parent: page.tall ? tail : spot
        width: parent.width

        Words {
            width: parent.width
            text: cautions.deviceOutside
            bold: true
            size: Theme.note
        }
    }
    Column {
        id: foot
        x: page.paneX
        width: page.paneWidth
        y: parent.height - height - Theme.gap
        spacing: Theme.gap

        Item {
            id: spot
            width: parent.width
            height: page.tall ? 0 : outside.height
            visible: !page.tall
        }
        SlabButton {
            objectName: "gunMain"
            width: parent.width
            height: implicitHeight
            visible: page.check.here
            pressable: visible
            text: page.check.mainText
            secondLine: page.check.mainSecond
            waits: page.check.mainWaits
            onClicked: page.check.start()
            onRefused: {
                if (!page.check.hasPerson)
                    page.whoAsked();
                else if (page.check.boothWords === "")
                    booth.opened = true;
                else if (page.check.stopped)
                    view.contentY = 0;
                else
                    page.check.openNext();
            }
        }
    }
    RowChoice {
        id: booth
        objectName: "gunBoothSheet"
        anchors.fill: parent
        title: qsTr("Which booth")
        rows: page.check.booths
        hint: qsTr("No booth is entered yet. The place Booth has them.")
        onChose: key => page.check.chooseBooth(key)
    }
    RowChoice {
        id: respirator
        objectName: "gunRespiratorSheet"
        anchors.fill: parent
        title: qsTr("What you breathe through")
        rows: page.check.respirators
        hint: qsTr("No respirator is entered yet. A manager enters it in the register.")
        onChose: key => page.check.chooseRespirator(key)
    }
    RowChoice {
        id: product
        objectName: "gunProductSheet"
        anchors.fill: parent
        title: qsTr("What is sprayed")
        rows: page.check.mixes
        stays: true
        hint: qsTr("No mix of today is logged on this car. Until then it counts as activated, unless you say otherwise.")
        onChose: key => page.check.flipMix(key)

        PlainButton {
            objectName: "gunActivated"
            width: parent.width
            height: implicitHeight
            visible: page.check.mixCount === 0
            pressable: visible
            text: qsTr("Activated, holds isocyanate")
            chosen: page.check.activated
            onClicked: page.check.sayActivated(true)
        }
        PlainButton {
            objectName: "gunNotActivated"
            width: parent.width
            height: implicitHeight
            visible: page.check.mixCount === 0
            pressable: visible
            text: qsTr("Not activated")
            secondLine: qsTr("no hardener with isocyanate in it")
            chosen: !page.check.activated
            onClicked: page.check.sayActivated(false)
        }
        PlainButton {
            objectName: "gunMix"
            width: parent.width
            height: implicitHeight
            text: qsTr("Log a mix")
            onClicked: {
                product.close();
                page.mixAsked();
            }
        }
    }
    ClimateSheet {
        id: air
        anchors.fill: parent
        climate: page.climate
        onWhoAsked: page.whoAsked()
        onKept: page.check.sayAirRead()
    }
    GunAnswers {
        anchors.fill: parent
        check: page.check
    }
}
