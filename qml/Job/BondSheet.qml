// BondSheet: what was bonded, with which product, in which airbag and belt case, set when.
// show() opens it empty. bond: the view model. Signals: whoAsked, productsAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property BondViewModel bond

    signal whoAsked
    signal productsAsked

    function show() {
        bond.start();
        part.text = "";
        time.text = "";
        opened = true;
    }

    title: qsTr("Glass or adhesive")

    component Heading: Words {
        width: parent ? parent.width : 0
        topPadding: 8
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }

    Connections {
        target: sheet.bond
        function onKept() {
            sheet.close();
        }
    }

    Column {
        id: form
        width: parent.width
        spacing: Theme.gap

        Heading { text: qsTr("What was bonded") }
        Flow {
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: sheet.bond.parts

                PlainButton {
                    required property int index
                    required property string modelData

                    objectName: "bondPart" + index
                    width: Math.min(form.width, Math.max(112, implicitWidth))
                    height: implicitHeight
                    text: modelData
                    chosen: sheet.bond.part === modelData
                    onClicked: {
                        part.text = modelData;
                        sheet.bond.sayPart(modelData);
                    }
                }
            }
        }
        FaceField {
            id: part
            objectName: "bondPartField"
            width: parent.width
            label: qsTr("Or in your words")
            placeholder: qsTr("left rear door glass")
            maximumLength: 60
            onEdited: words => sheet.bond.sayPart(words)
        }
        Heading { text: qsTr("With") }
        Words {
            width: parent.width
            visible: sheet.bond.productCount === 0
            text: qsTr("No urethane or panel adhesive is entered yet. A manager types its sheet once.")
            color: Theme.pencil
        }
        PlainButton {
            objectName: "bondProducts"
            width: parent.width
            height: visible ? implicitHeight : 0
            visible: sheet.bond.productCount === 0
            pressable: visible
            text: qsTr("Products and their sheets")
            onClicked: sheet.productsAsked()
        }
        Repeater {
            model: sheet.bond.products

            PlainButton {
                required property int index
                required property string key
                required property string title
                required property string kindWords
                required chosen

                objectName: "bondProduct" + index
                width: form.width
                height: implicitHeight
                text: title
                secondLine: kindWords
                onClicked: sheet.bond.chooseProduct(key)
            }
        }
        Heading {
            visible: sheet.bond.caseCount > 0
            text: qsTr("Airbag and belt case")
        }
        Repeater {
            model: sheet.bond.cases

            PlainButton {
                required property int index
                required property string key
                required property string title
                required chosen

                objectName: "bondCase" + index
                width: form.width
                height: implicitHeight
                text: title
                onClicked: sheet.bond.chooseCase(key)
            }
        }
        Heading { text: qsTr("Set") }
        Flow {
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: sheet.bond.agos

                PlainButton {
                    required property int index
                    required property string modelData

                    objectName: "bondAgo" + index
                    width: Math.min(form.width, Math.max(100, implicitWidth))
                    height: implicitHeight
                    text: modelData
                    chosen: sheet.bond.ago === index
                    onClicked: {
                        time.text = "";
                        sheet.bond.chooseAgo(index);
                    }
                }
            }
        }
        FaceField {
            id: time
            objectName: "bondTime"
            width: parent.width
            label: qsTr("Or at, today")
            placeholder: qsTr("10:05")
            maximumLength: 10
            wrong: sheet.bond.timeRefusal
            onEdited: words => sheet.bond.sayTime(words)
        }
        Words {
            width: parent.width
            text: sheet.bond.caution
            size: Theme.note
            color: Theme.pencil
        }
        SlabButton {
            objectName: "bondKeep"
            width: parent.width
            height: implicitHeight
            text: sheet.bond.mainText
            secondLine: sheet.bond.waits !== "" ? sheet.bond.waits
                : sheet.bond.ofGlass ? qsTr("the keys stay with the glass tech") : ""
            waits: sheet.bond.waits !== ""
            onRefused: sheet.whoAsked()
            onClicked: sheet.bond.keep()
        }
    }
}
