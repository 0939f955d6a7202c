// RespiratorSheet: a respirator of the shop: model, kind, protection factor with its scheme, authority
// and year; and what it may be worn up to by each limit that holds. Who is no manager reads it.
// show(key) fills it, "" is a new one. Signal: sumAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property RespiratorForm form
    property int kind: 0
    property int scheme: 0
    property bool retired: false

    signal sumAsked

    function show(key: string) {
        form.open(key);
        model.text = form.model;
        kind = form.kind;
        scheme = form.scheme;
        factor.text = form.factor;
        authority.text = form.authority;
        year.text = form.year;
        allowed.text = form.allowed;
        retired = form.retired;
        opened = true;
    }
    // What the table of the scheme says is filled in anew; what somebody typed himself stays.
    function refill(nextKind: int, nextScheme: int) {
        if (factor.text === form.usualFactor(kind, scheme))
            factor.text = form.usualFactor(nextKind, nextScheme);
        if (authority.text === form.usualAuthority(scheme))
            authority.text = form.usualAuthority(nextScheme);
        if (year.text === form.usualYear(scheme))
            year.text = form.usualYear(nextScheme);
        kind = nextKind;
        scheme = nextScheme;
    }
    function keep() {
        form.keep(model.text, kind, scheme, factor.text, authority.text, year.text, allowed.text, retired);
    }

    title: form.fresh ? qsTr("New respirator") : form.model

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

        FormField {
            id: model
            objectName: "respiratorModel"
            width: parent.width
            form: sheet.form
            field: "model"
            label: qsTr("Model, as it is written on it")
            readOnly: !sheet.form.mayKeep
            maximumLength: 80
        }
        Chips {
            width: parent.width
            title: qsTr("Kind")
            key: "respiratorKind"
            words: sheet.form.kinds
            chosen: sheet.kind
            enabled: sheet.form.mayKeep
            onPicked: index => sheet.refill(index, sheet.scheme)
        }
        Chips {
            width: parent.width
            title: qsTr("Scheme of its protection factor")
            key: "respiratorScheme"
            words: sheet.form.schemes
            chosen: sheet.scheme
            enabled: sheet.form.mayKeep
            onPicked: index => sheet.refill(sheet.kind, index)
        }
        Words {
            width: parent.width
            text: qsTr("US and UK factors are never mixed: each goes with limits of its own scheme. A hood holds 25 in the US unless its maker has shown more.")
            size: Theme.note
            color: Theme.pencil
        }
        FormField {
            id: factor
            objectName: "respiratorFactor"
            width: parent.width
            form: sheet.form
            field: "factor"
            label: qsTr("Assigned protection factor")
            readOnly: !sheet.form.mayKeep
            maximumLength: 12
        }
        FormField {
            id: authority
            objectName: "respiratorAuthority"
            width: parent.width
            form: sheet.form
            field: "authority"
            label: qsTr("Who assigns it")
            readOnly: !sheet.form.mayKeep
            maximumLength: 120
        }
        FormField {
            id: year
            objectName: "respiratorYear"
            width: parent.width
            form: sheet.form
            field: "year"
            label: qsTr("Of which year")
            readOnly: !sheet.form.mayKeep
            digitsOnly: true
            maximumLength: 4
        }
        FaceField {
            id: allowed
            objectName: "respiratorAllowed"
            width: parent.width
            visible: sheet.form.asksAllowed(sheet.kind)
            label: qsTr("For activated product, only where the shop's written program says so: what it rests on")
            placeholder: qsTr("empty: not for activated product")
            readOnly: !sheet.form.mayKeep
            maximumLength: 200
        }
        PlainButton {
            objectName: "respiratorRetired"
            width: parent.width
            height: implicitHeight
            visible: sheet.form.mayKeep && !sheet.form.fresh
            pressable: visible
            text: sheet.retired ? qsTr("Not used any more") : qsTr("In use")
            secondLine: sheet.retired ? qsTr("tap: it is used again") : qsTr("tap: it is not used any more")
            chosen: sheet.retired
            onClicked: sheet.retired = !sheet.retired
        }
        SlabButton {
            objectName: "respiratorKeep"
            width: parent.width
            height: implicitHeight
            visible: sheet.form.mayKeep
            pressable: visible
            text: sheet.form.fresh ? qsTr("Add this respirator") : qsTr("Keep it as typed")
            onClicked: sheet.keep()
        }
        Words {
            width: parent.width
            visible: !sheet.form.mayKeep
            text: qsTr("A manager enters and changes respirators.")
            color: Theme.pencil
        }
        Words {
            width: parent.width
            visible: sheet.form.useCount > 0
            topPadding: 8
            text: qsTr("May be worn up to")
            bold: true
            color: Theme.pencil
            Accessible.role: Accessible.Heading
        }
        Repeater {
            model: sheet.form.uses

            FigureBlock {
                required property string key
                required property string title
                required property string from
                required property bool opens
                required value
                required note

                width: page.width
                label: qsTr("%1, %2").arg(title).arg(from)
                grade: opens ? FigureBlock.Plain : FigureBlock.Missing
                pressable: opens
                onClicked: {
                    sheet.form.openUse(key);
                    sheet.sumAsked();
                }
            }
        }
    }
}
