// FitTestSheet: a fit test typed from its report: the respirator, the size, the factor of each
// exercise on the big keys with the overall factor as it grows, the day and how long it holds.
// show() fills it for the person who is open. Signal: sumAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property FitTestForm form
    property string personName: ""

    signal sumAsked

    function show() {
        size.text = form.size;
        day.text = form.day;
        valid.text = form.validDays;
        pad.typed = "";
        opened = true;
    }
    function add() {
        if (pad.typed === "")
            return;
        form.typeFactor(pad.value);
        pad.typed = "";
        pad.whole = false;
    }

    title: qsTr("Fit test, %1").arg(personName)

    Connections {
        target: sheet.form
        function onKept() {
            sheet.close();
        }
    }

    Column {
        id: page
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gutter

        Words {
            width: parent.width
            visible: sheet.form.respiratorCount === 0
            text: qsTr("No respirator in the register fits tightly. A loose hood is not fit tested.")
        }
        Column {
            width: parent.width
            visible: sheet.form.respiratorCount > 0
            spacing: Theme.gap

            Repeater {
                model: sheet.form.respirators

                PlainButton {
                    required property int index
                    required property string key
                    required property string title
                    required property string note
                    required chosen

                    objectName: "fitRespirator" + index
                    width: page.width
                    height: implicitHeight
                    text: title
                    secondLine: note
                    onClicked: sheet.form.chooseRespirator(key)
                }
            }
        }
        Chips {
            width: parent.width
            visible: sheet.form.mayBeQualitative
            title: qsTr("Method")
            key: "fitMethod"
            words: [qsTr("Quantitative"), qsTr("Qualitative")]
            chosen: sheet.form.quantitative ? 0 : 1
            onPicked: index => sheet.form.chooseMethod(index === 0)
        }
        FormField {
            id: size
            objectName: "fitSize"
            width: parent.width
            form: sheet.form
            field: "size"
            label: qsTr("Size")
            placeholder: qsTr("M")
            maximumLength: 20
        }
        Column {
            width: parent.width
            visible: sheet.form.quantitative
            spacing: Theme.gap

            FigureBlock {
                objectName: "fitOverall"
                width: parent.width
                label: qsTr("Overall fit factor, without the grimace")
                grade: sheet.form.overall === "" ? FigureBlock.Missing : FigureBlock.Plain
                value: sheet.form.overall === "" ? qsTr("no factor typed yet") : sheet.form.overall
                limitWords: sheet.form.markWords
                note: sheet.form.factors
                out: sheet.form.under
                pressable: sheet.form.overall !== ""
                onClicked: {
                    sheet.form.openSum();
                    sheet.sumAsked();
                }
            }
            KeyPad {
                id: pad
                objectName: "fitPad"
                width: Math.min(parent.width, 420)
                digits: 6
                label: qsTr("Factor of exercise %1").arg(sheet.form.factorCount + 1)
                wrong: sheet.form.wrongField === "factor" ? sheet.form.wrongWords : ""
                onComplete: sheet.add()
            }
            ActRow {
                width: Math.min(parent.width, 420)

                PlainButton {
                    objectName: "fitAdd"
                    text: qsTr("Add this factor")
                    dashed: pad.typed === ""
                    onClicked: sheet.add()
                }
                PlainButton {
                    objectName: "fitDrop"
                    visible: sheet.form.factorCount > 0
                    pressable: visible
                    text: qsTr("Drop the last")
                    onClicked: sheet.form.dropFactor()
                }
            }
        }
        Chips {
            width: parent.width
            visible: !sheet.form.quantitative
            title: qsTr("What the test said")
            key: "fitPassed"
            words: [qsTr("Passed"), qsTr("Not passed")]
            chosen: sheet.form.passed ? 0 : 1
            onPicked: index => sheet.form.sayPassed(index === 0)
        }
        FormField {
            id: day
            objectName: "fitDay"
            width: parent.width
            form: sheet.form
            field: "day"
            label: qsTr("Tested on")
            placeholder: qsTr("3/9/2026")
            tail: sheet.form.dayWords(text)
            maximumLength: 10
        }
        FormField {
            id: valid
            objectName: "fitValid"
            width: parent.width
            form: sheet.form
            field: "validDays"
            label: qsTr("Holds for, in days (US: a year at most)")
            digitsOnly: true
            maximumLength: 5
        }
        SlabButton {
            objectName: "fitKeep"
            width: parent.width
            height: implicitHeight
            text: qsTr("Keep this fit test")
            secondLine: waits ? qsTr("a manager keeps it") : sheet.form.under && sheet.form.quantitative ? qsTr("it is under the pass mark, and kept as such") : ""
            waits: !sheet.form.mayKeep
            onClicked: sheet.form.keep(size.text, day.text, valid.text)
        }
    }
}
