// LimitSheet: one limit as it was read: a manager types it, everybody reads it. A limit that does not
// hold where the shop is is retired. show(key) fills it, "" is a new one.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property LimitsViewModel limits
    property int kind: 0
    property int unit: 0
    property int scheme: 0

    function show(key: string) {
        limits.open(key);
        substance.text = limits.substance;
        kind = limits.kind;
        value.text = limits.value;
        unit = limits.unit;
        authority.text = limits.authority;
        year.text = limits.year;
        source.text = limits.source;
        scheme = limits.scheme;
        dangerous.text = limits.dangerous;
        opened = true;
    }

    title: limits.fresh ? qsTr("New limit") : limits.substance

    Connections {
        target: sheet.limits
        function onKept() {
            sheet.close();
        }
    }

    Column {
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gutter

        FormField {
            id: substance
            objectName: "limitSubstance"
            width: parent.width
            form: sheet.limits
            field: "substance"
            label: qsTr("Substance, as the authority calls it")
            readOnly: !sheet.limits.mayKeep
            maximumLength: 80
        }
        Chips {
            width: parent.width
            title: qsTr("Held against")
            key: "limitKind"
            words: sheet.limits.kinds
            chosen: sheet.kind
            enabled: sheet.limits.mayKeep
            onPicked: index => sheet.kind = index
        }
        FormField {
            id: value
            objectName: "limitValue"
            width: parent.width
            form: sheet.limits
            field: "value"
            label: qsTr("Value, as it is printed")
            tail: sheet.limits.units[sheet.unit] ?? ""
            readOnly: !sheet.limits.mayKeep
            maximumLength: 16
        }
        Chips {
            width: parent.width
            title: qsTr("Unit")
            key: "limitUnit"
            words: sheet.limits.units
            chosen: sheet.unit
            enabled: sheet.limits.mayKeep
            onPicked: index => sheet.unit = index
        }
        FormField {
            id: authority
            objectName: "limitAuthority"
            width: parent.width
            form: sheet.limits
            field: "authority"
            label: qsTr("Authority")
            readOnly: !sheet.limits.mayKeep
            maximumLength: 120
        }
        FormField {
            id: year
            objectName: "limitYear"
            width: parent.width
            form: sheet.limits
            field: "year"
            label: qsTr("Year")
            readOnly: !sheet.limits.mayKeep
            digitsOnly: true
            maximumLength: 4
        }
        FormField {
            id: source
            objectName: "limitSource"
            width: parent.width
            form: sheet.limits
            field: "source"
            label: qsTr("Source: where the value was read")
            readOnly: !sheet.limits.mayKeep
            maximumLength: 200
        }
        Chips {
            width: parent.width
            title: qsTr("Protection factors that go with it")
            key: "limitScheme"
            words: sheet.limits.schemes
            chosen: sheet.scheme
            enabled: sheet.limits.mayKeep
            onPicked: index => sheet.scheme = index
        }
        FormField {
            id: dangerous
            objectName: "limitDangerous"
            width: parent.width
            form: sheet.limits
            field: "dangerous"
            label: qsTr("Immediately dangerous, in the same unit, where it is printed")
            placeholder: qsTr("empty: none is known")
            tail: sheet.limits.units[sheet.unit] ?? ""
            readOnly: !sheet.limits.mayKeep
            maximumLength: 16
        }
        Words {
            width: parent.width
            text: qsTr("Check it against today's local rule.")
            bold: true
        }
        SlabButton {
            objectName: "limitKeep"
            width: parent.width
            height: implicitHeight
            visible: sheet.limits.mayKeep
            pressable: visible
            text: sheet.limits.fresh ? qsTr("Add this limit") : qsTr("Keep it as typed")
            onClicked: sheet.limits.keep(substance.text, sheet.kind, value.text, sheet.unit, authority.text, year.text, source.text, sheet.scheme, dangerous.text)
        }
        PlainButton {
            objectName: "limitRetire"
            width: parent.width
            height: implicitHeight
            visible: sheet.limits.mayKeep && !sheet.limits.fresh
            pressable: visible
            text: sheet.limits.retired ? qsTr("It holds here") : qsTr("It does not hold here")
            secondLine: sheet.limits.retired ? qsTr("samples are held against it again") : qsTr("it stays in the list, and no sample is held against it")
            onClicked: sheet.limits.retire(!sheet.limits.retired)
        }
        Words {
            width: parent.width
            visible: !sheet.limits.mayKeep
            text: qsTr("A manager adds and changes limits.")
            color: Theme.pencil
        }
    }
}
