// Sprayed: what was sprayed on the car: its mixes with their pot life and coats, who sprayed and
// what he went without, the air, the bake. sprayed: the view model. wide: the sprayings, the air,
// the bake and the acts in a pane right. open: "mix", a new one is logged at once.
// Signals: whoAsked, gunAsked, productsAsked; labelAsked(key): the picture of a label.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Item {
    id: page

    required property SprayedViewModel sprayed
    property bool wide: false
    property string open: ""
    property real undoRoom: 0  // kept free above the acts
    readonly property real actsTop: acts.y
    readonly property real actsX: acts.x
    readonly property real actsWidth: acts.width
    readonly property real paneWidth: wide ? Math.min(440, width / 2) : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth

    signal whoAsked
    signal gunAsked
    signal productsAsked
    signal labelAsked(string key)

    implicitHeight: acts.height + undoRoom + 220
    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("What was sprayed")
    Component.onCompleted: {
        if (open === "mix")
            mixSheet.show("");
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
                text: qsTr("What was sprayed")
                bold: true
                size: Theme.screen
                Accessible.role: Accessible.Heading
            }
            PaperCard {
                width: parent.width
                visible: page.sprayed.mixCount === 0
                dashed: true

                Item {
                    width: parent.width
                    height: Math.max(empty.height, 64)

                    Hatch {
                        width: 56
                        height: 56
                        anchors.verticalCenter: parent.verticalCenter
                    }
                    Words {
                        id: empty
                        x: 70
                        width: parent.width - x
                        anchors.verticalCenter: parent.verticalCenter
                        text: qsTr("No mix yet. Product, batch and time, logged outside the mixing room's door.")
                        color: Theme.pencil
                    }
                }
            }
            Repeater {
                model: page.sprayed.mixes

                MixCard {
                    required property int index
                    required property string key

                    objectName: "mix" + index
                    width: body.width
                    pressable: page.sprayed.writable
                    onClicked: mixSheet.show(key)
                    onCoatsAsked: coatsSheet.show(key)
                }
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
        topPadding: page.wide ? 4 : 0
        spacing: Theme.gap

        FactRow {
            objectName: "sprayedAir"
            width: parent.width
            title: qsTr("Air and surface")
            words: page.sprayed.climate.lastWords
            shape: page.sprayed.climate.lastShape
            pressable: page.sprayed.writable
            onClicked: airSheet.show()
        }
        FactRow {
            objectName: "sprayedBake"
            width: parent.width
            title: qsTr("Bake")
            words: page.sprayed.bake.warning !== "" ? page.sprayed.bake.warning : page.sprayed.bake.stateWords
            shape: page.sprayed.bake.stateShape
            alarm: page.sprayed.bake.warning !== ""
            pressable: page.sprayed.writable
            onClicked: bakeSheet.show()
        }
        FactRow {
            objectName: "sprayedLabel"
            width: parent.width
            visible: page.sprayed.writable && page.sprayed.mixCount > 0 && page.sprayed.labelKey !== ""
            pressable: visible
            title: qsTr("Picture of the mix label")
            words: qsTr("not taken yet")
            shape: ShapeKind.NotYet
            onClicked: page.labelAsked(page.sprayed.labelKey)
        }
        Words {
            width: parent.width
            visible: page.sprayed.sprayCount > 0
            topPadding: Theme.gap
            text: qsTr("Who sprayed")
            bold: true
            Accessible.role: Accessible.Heading
        }
        Repeater {
            model: page.sprayed.sprays

            SprayCard {
                required property int index

                objectName: "spray" + index
                width: rest.width
            }
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
            visible: page.sprayed.writable

            PlainButton {
                objectName: "sprayedGun"
                beside: false
                text: qsTr("Before the gun")
                onClicked: page.gunAsked()
            }
            PlainButton {
                objectName: "sprayedMix"
                beside: false
                visible: page.sprayed.mainMix !== ""
                pressable: visible
                text: qsTr("Log a mix")
                onClicked: mixSheet.show("")
            }
        }
        SlabButton {
            objectName: "sprayedMain"
            width: parent.width
            height: implicitHeight
            visible: page.sprayed.writable
            pressable: visible
            text: page.sprayed.mainText
            secondLine: page.sprayed.mainSecond
            onClicked: page.sprayed.mainMix === "" ? mixSheet.show("") : coatsSheet.show(page.sprayed.mainMix)
        }
    }
    MixSheet {
        id: mixSheet
        anchors.fill: parent
        sprayed: page.sprayed
        onWhoAsked: page.whoAsked()
        onProductsAsked: page.productsAsked()
    }
    CoatsSheet {
        id: coatsSheet
        anchors.fill: parent
        sprayed: page.sprayed
        onWhoAsked: page.whoAsked()
    }
    ClimateSheet {
        id: airSheet
        anchors.fill: parent
        climate: page.sprayed.climate
        onWhoAsked: page.whoAsked()
    }
    BakeSheet {
        id: bakeSheet
        anchors.fill: parent
        bake: page.sprayed.bake
        onWhoAsked: page.whoAsked()
    }
}
