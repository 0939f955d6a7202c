// SampleSheet: one sample of the air that somebody breathed, typed from the laboratory's report.
// show() opens it for the person who taps.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property ExposureViewModel exposure
    property string person: ""
    property string worn: ""
    property int unit: 0
    readonly property int fixedUnit: exposure.unitOf(substance.text)

    function show(who: string) {
        exposure.nothingWrong();
        person = who;
        worn = "";
        unit = 0;
        substance.text = "";
        value.text = "";
        day.text = exposure.todayText;
        from.text = "";
        to.text = "";
        opened = true;
    }

    title: qsTr("Sample")
    onFixedUnitChanged: {
        if (fixedUnit >= 0)
            unit = fixedUnit;
    }

    Connections {
        target: sheet.exposure
        function onKept() {
            sheet.close();
        }
    }

    Column {
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gutter

        RowChips {
            width: parent.width
            title: qsTr("Who wore the sampler")
            objectKey: "samplePerson"
            rows: sheet.exposure.people
            chosen: sheet.person
            wrong: sheet.exposure.wrongField === "person" ? sheet.exposure.wrongWords : ""
            onPicked: key => sheet.person = key
        }
        Chips {
            width: parent.width
            title: qsTr("Substance")
            key: "sampleSubstance"
            words: sheet.exposure.substances
            chosen: Array.from(sheet.exposure.substances).indexOf(substance.text)
            onPicked: index => substance.text = sheet.exposure.substances[index]
        }
        FormField {
            id: substance
            objectName: "sampleSubstance"
            width: parent.width
            form: sheet.exposure
            field: "substance"
            label: qsTr("Or another one, as its limit calls it")
            maximumLength: 80
        }
        FormField {
            id: value
            objectName: "sampleValue"
            width: parent.width
            form: sheet.exposure
            field: "value"
            label: qsTr("Value, as the report gives it")
            tail: sheet.exposure.units[sheet.unit] ?? ""
            maximumLength: 16
        }
        Chips {
            width: parent.width
            visible: sheet.fixedUnit < 0
            title: qsTr("Unit")
            key: "sampleUnit"
            words: sheet.exposure.units
            chosen: sheet.unit
            onPicked: index => sheet.unit = index
        }
        Words {
            width: parent.width
            visible: sheet.fixedUnit >= 0
            text: qsTr("In %1, as its limits are. Nothing is converted here.").arg(sheet.exposure.units[sheet.fixedUnit] ?? "")
            size: Theme.note
            color: Theme.pencil
        }
        FormField {
            id: day
            objectName: "sampleDay"
            width: parent.width
            form: sheet.exposure
            field: "day"
            label: qsTr("Day on which it began")
            placeholder: qsTr("3/9/2026")
            tail: sheet.exposure.dayWords(text)
            maximumLength: 10
        }
        FormField {
            id: from
            objectName: "sampleFrom"
            width: parent.width
            form: sheet.exposure
            field: "from"
            label: qsTr("From")
            placeholder: qsTr("7:10")
            maximumLength: 5
        }
        FormField {
            id: to
            objectName: "sampleTo"
            width: parent.width
            form: sheet.exposure
            field: "to"
            label: qsTr("To")
            placeholder: qsTr("15:40")
            tail: sheet.exposure.lengthWords(from.text, text)
            maximumLength: 5
        }
        RowChips {
            width: parent.width
            title: qsTr("Respirator that was worn meanwhile")
            objectKey: "sampleWorn"
            rows: sheet.exposure.respirators
            chosen: sheet.worn
            onPicked: key => sheet.worn = sheet.worn === key ? "" : key
        }
        SlabButton {
            objectName: "sampleKeep"
            width: parent.width
            height: implicitHeight
            text: qsTr("Log this sample")
            onClicked: sheet.exposure.keep(sheet.person, substance.text, value.text, sheet.unit, day.text, from.text, to.text, sheet.worn)
        }
    }
}
