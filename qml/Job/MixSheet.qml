// MixSheet: one mix, logged outside the mixing room's door: product, batch, whether its color is
// approved, and how long ago. sprayed: the view model. Signals: whoAsked, productsAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property SprayedViewModel sprayed

    signal whoAsked
    signal productsAsked

    function show(mix: string) {
        sprayed.startMix(mix);
        batch.text = sprayed.batch;
        opened = true;
    }

    title: sprayed.changing ? qsTr("Change a mix") : qsTr("Log a mix")

    Connections {
        target: sheet.sprayed
        function onMixKept() {
            sheet.close();
        }
        function onMixChanged() {
            if (batch.text !== sheet.sprayed.batch)
                batch.text = sheet.sprayed.batch;
        }
    }

    Column {
        id: form
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gap

        Words {
            width: parent.width
            visible: sheet.sprayed.productCount === 0
            text: qsTr("No product is entered yet. A manager types it once from its sheet.")
            color: Theme.pencil
        }
        PlainButton {
            objectName: "mixProducts"
            width: parent.width
            height: implicitHeight
            visible: sheet.sprayed.productCount === 0
            pressable: visible
            text: qsTr("To the products")
            onClicked: {
                sheet.close();
                sheet.productsAsked();
            }
        }
        Repeater {
            model: sheet.sprayed.products

            PlainButton {
                required property int index
                required property string key
                required property string title
                required property string words
                required chosen

                objectName: "mixProduct" + index
                visible: chosen || !sheet.sprayed.productChosen
                pressable: visible
                width: form.width
                height: implicitHeight
                text: title
                secondLine: chosen ? qsTr("%1. Press for another one").arg(words) : words
                onClicked: sheet.sprayed.chooseProduct(chosen ? "" : key)
            }
        }
        FaceField {
            id: batch
            objectName: "mixBatch"
            width: parent.width
            visible: sheet.sprayed.productChosen
            label: qsTr("Batch on the cans")
            maximumLength: 100
            onEdited: text => sheet.sprayed.batch = text
        }
        PlainButton {
            objectName: "mixApproved"
            width: parent.width
            height: implicitHeight
            visible: sheet.sprayed.asksApproval
            pressable: visible
            beside: true
            shape: sheet.sprayed.approved ? ShapeKind.Done : ShapeKind.Must
            shapeKey: "approved"
            text: sheet.sprayed.approvalWords
            chosen: sheet.sprayed.approved
            onClicked: sheet.sprayed.approved = !sheet.sprayed.approved
        }
        Words {
            width: parent.width
            visible: agos.visible
            topPadding: 4
            text: qsTr("When it was mixed")
            bold: true
            size: Theme.note
            color: Theme.pencil
        }
        Row {
            id: agos
            width: parent.width
            visible: sheet.sprayed.productChosen && !sheet.sprayed.changing
            spacing: Theme.gap

            Repeater {
                model: [0, 2, 5]

                PlainButton {
                    required property int modelData

                    objectName: "mixAgo" + modelData
                    width: (agos.width - 2 * agos.spacing) / 3
                    height: implicitHeight
                    text: modelData === 0 ? qsTr("Now") : qsTr("%1 min ago").arg(modelData)
                    chosen: sheet.sprayed.agoMin === modelData
                    onClicked: sheet.sprayed.agoMin = modelData
                }
            }
        }
        SlabButton {
            objectName: "mixKeep"
            width: parent.width
            height: implicitHeight
            visible: sheet.sprayed.productCount > 0
            pressable: visible
            text: sheet.sprayed.mixText
            secondLine: sheet.sprayed.mixSecond
            waits: sheet.sprayed.mixWaits
            onClicked: sheet.sprayed.keepMix()
            onRefused: if (!sheet.sprayed.hasPerson)
                sheet.whoAsked()
        }
    }
}
