// Cure: how far the film of the car is and when it may be touched: each mix on each group of panels
// with its milestones on a line, what was bonded and from when the car may be driven.
// cure, bond: view models; wide: bonded parts and the acts in a pane right.
// Signals: whoAsked, sprayedAsked (the mix and its coats), productsAsked. Key: Enter the main act.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property CureViewModel cure
    required property BondViewModel bond
    property bool wide: false
    property real undoRoom: 0  // kept free above the acts
    readonly property real actsTop: acts.y
    readonly property real actsX: acts.x
    readonly property real actsWidth: acts.width
    readonly property bool beside: wide && width >= 720
    readonly property real paneWidth: beside ? 376 : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth
    implicitHeight: acts.height + undoRoom + 200

    signal whoAsked
    signal sprayedAsked
    signal productsAsked

    function readTemperature() {
        cure.startReading();
        reading.opened = true;
    }

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Cure")
    Keys.onPressed: event => {
        event.accepted = event.key === Qt.Key_Return || event.key === Qt.Key_Enter;
        if (event.accepted)
            main.press();
    }

    Flickable {
        id: view
        width: page.beside ? page.paneX : parent.width
        height: page.beside ? parent.height : acts.y - Theme.gap - page.undoRoom
        contentHeight: body.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: body
            x: Theme.gutter
            width: view.width - 2 * Theme.gutter
            bottomPadding: Theme.gap
            spacing: Theme.gap

            Words {
                width: parent.width
                text: qsTr("Cure")
                bold: true
                size: Theme.screen
                Accessible.role: Accessible.Heading
            }
            Item {
                id: above
                visible: !page.beside && page.cure.bondCount > 0
                width: parent.width
                height: visible ? bonded.height : 0
            }
            PaperCard {
                width: parent.width
                visible: page.cure.emptyWords !== ""
                dashed: true

                Item {
                    width: parent.width
                    height: Math.max(why.height, 64)

                    Hatch {
                        width: 56
                        height: 56
                        anchors.verticalCenter: parent.verticalCenter
                    }
                    Words {
                        id: why
                        x: 70
                        width: parent.width - x
                        anchors.verticalCenter: parent.verticalCenter
                        text: page.cure.emptyWords
                        color: Theme.pencil
                    }
                }
            }
            Grid {
                id: grid
                width: parent.width
                columns: page.beside && width > 760 * Theme.textScale ? 2 : 1
                columnSpacing: Theme.gap
                rowSpacing: Theme.gap

                Repeater {
                    model: page.cure.clocks

                    CureCard {
                        required property string key

                        width: (grid.width - (grid.columns - 1) * grid.columnSpacing) / grid.columns
                        charted: page.beside
                        onThumbnailSaid: firm => page.cure.checkThumbnail(key, firm)
                        onSumAsked: sum.opened = page.cure.openSum(key)
                    }
                }
            }
            Words {
                width: parent.width
                visible: page.cure.clockCount > 0
                text: qsTr("By the times of the product's sheet and the panel's own temperature. The sheet wins.")
                size: Theme.note
                color: Theme.pencil
            }
        }
    }
    Flickable {
        visible: page.beside
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
            height: bonded.height + Theme.gap
        }
    }
    Column {
        id: bonded
        parent: page.beside ? besides : above
        width: parent.width
        visible: page.cure.bondCount > 0
        spacing: Theme.gap

        Words {
            width: parent.width
            text: qsTr("Bonded parts")
            bold: true
            size: Theme.lead
            Accessible.role: Accessible.Heading
        }
        Repeater {
            model: page.cure.bonds

            BondCard {
                required property string key

                objectName: "bondCard"
                width: bonded.width
                onSumAsked: sum.opened = page.cure.openBondSum(key)
            }
        }
        PlainButton {
            objectName: "logAir"
            width: parent.width
            height: implicitHeight
            visible: page.cure.writable && page.cure.doNotDrive !== ""
            pressable: visible
            text: qsTr("Log the air here")
            secondLine: qsTr("the coldest and driest count")
            onClicked: air.opened = true
        }
    }
    Column {
        id: acts
        x: page.paneX
        width: page.paneWidth
        y: parent.height - height - Theme.gap
        spacing: Theme.gap

        ActRow {
            width: parent.width
            visible: page.cure.writable

            PlainButton {
                objectName: "cureSprayed"
                visible: page.cure.readable
                pressable: visible
                text: qsTr("Mix and coats")
                beside: false
                onClicked: page.sprayedAsked()
            }
            PlainButton {
                objectName: "cureBond"
                text: qsTr("Glass or adhesive")
                beside: false
                onClicked: bonding.show()
            }
        }
        SlabButton {
            id: main
            objectName: "cureMain"
            width: parent.width
            height: implicitHeight
            visible: page.cure.writable
            pressable: visible
            text: page.cure.mainText
            secondLine: page.cure.mainSecond
            waits: page.cure.mainWaits
            onRefused: page.whoAsked()
            onClicked: page.cure.readable ? page.readTemperature() : page.sprayedAsked()
        }
    }
    TemperatureSheet {
        id: reading
        objectName: "temperatureSheet"
        anchors.fill: parent
        cure: page.cure
        onWhoAsked: page.whoAsked()
    }
    BondSheet {
        id: bonding
        objectName: "bondSheet"
        anchors.fill: parent
        bond: page.bond
        onWhoAsked: page.whoAsked()
        onProductsAsked: {
            close();
            page.productsAsked();
        }
    }
    GlassAirSheet {
        id: air
        objectName: "glassAirSheet"
        anchors.fill: parent
        bond: page.bond
    }
    SumSheet {
        id: sum
        objectName: "cureSum"
        anchors.fill: parent
        sum: page.cure.sum
    }
}
