// TemperatureSheet: the surface temperature of a group of panels on large keys; after one is logged
// the next group is asked. cure: the view model. Signal: whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property CureViewModel cure
    property bool minus: false

    signal whoAsked

    function log() {
        cure.logTemperature(pad.value, minus);
    }

    title: cure.groupTitle === "" ? qsTr("Panel temperature") : cure.groupTitle
    onOpenedChanged: {
        pad.typed = "";
        minus = false;
    }

    Connections {
        target: sheet.cure
        enabled: sheet.opened
        function onLogged() {
            pad.typed = "";
            sheet.minus = false;
        }
        function onAllRead() {
            sheet.close();
        }
    }

    Column {
        width: parent.width
        spacing: Theme.gap

        KeyPad {
            id: pad
            objectName: "temperaturePad"
            width: parent.width
            focus: true
            digits: 3
            label: sheet.cure.groupTitle === "" ? qsTr("Choose the panels first") : qsTr("Surface")
            unitText: sheet.minus ? qsTr("%1, below zero").arg(sheet.cure.unit) : sheet.cure.unit
            unitKey: qsTr("Minus")
            wrong: sheet.cure.refusal
            onUnitPressed: sheet.minus = !sheet.minus
        }
        SlabButton {
            objectName: "temperatureLog"
            width: parent.width
            height: implicitHeight
            text: pad.value < 0 ? qsTr("Log panel temperature") : sheet.cure.logWords(pad.value, sheet.minus)
            secondLine: sheet.cure.mainWaits ? qsTr("say who you are first")
                : sheet.cure.groupTitle === "" ? qsTr("choose the panels")
                : pad.value < 0 ? qsTr("type it") : sheet.cure.groupTitle
            waits: sheet.cure.mainWaits || sheet.cure.groupTitle === "" || pad.value < 0
            onRefused: if (sheet.cure.mainWaits) sheet.whoAsked()
            onClicked: sheet.log()
        }
        Flow {
            id: groups
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: sheet.cure.groups

                PlainButton {
                    required property string key
                    required property string title
                    required property string facts
                    required chosen

                    objectName: "group_" + key
                    width: Math.min(groups.width, Math.max(150, implicitWidth))
                    height: implicitHeight
                    text: title
                    secondLine: facts
                    onClicked: sheet.cure.chooseGroup(key)
                }
            }
        }
        Words {
            width: parent.width
            text: qsTr("On the panel itself, never the air. Low panels and plastic are colder than the roof.")
            size: Theme.note
            color: Theme.pencil
        }
    }
}
