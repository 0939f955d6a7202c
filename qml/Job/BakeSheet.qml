// BakeSheet: the carmaker's limit, start and end of the bake, and how near the panels come to the
// limit. bake: the view model. Signal: whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property BakeViewModel bake
    property bool typing: false

    signal whoAsked

    function show() {
        bake.beginLimit();
        source.text = "";
        typing = bake.needsLimit && !bake.hasLimit;
        opened = true;
    }

    title: qsTr("Bake")

    Connections {
        target: sheet.bake
        function onLimitKept() {
            sheet.typing = false;
        }
    }
    Cautions {
        id: cautions
    }

    Column {
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gap

        Words {
            width: parent.width
            visible: !sheet.typing || sheet.bake.limitTyped
            text: qsTr("%1. %2").arg(sheet.bake.driveWords).arg(sheet.bake.limitWords)
            bold: sheet.bake.needsLimit && !sheet.bake.hasLimit
        }
        PaperCard {
            objectName: "bakeWarning"
            width: parent.width
            visible: sheet.bake.warning !== ""
            must: true
            name: sheet.bake.warning
            Accessible.role: Accessible.AlertMessage

            Item {
                width: parent.width
                height: Math.max(mark.height, warned.height)

                StateShape {
                    id: mark
                    kind: ShapeKind.Must
                    size: 28
                }
                Words {
                    id: warned
                    x: 40
                    width: parent.width - x
                    text: sheet.bake.warning
                    mute: true
                    bold: true
                    color: Theme.oxide
                }
            }
        }
        Words {
            width: parent.width
            visible: !sheet.typing
            text: sheet.bake.stateWords
            bold: true
            size: Theme.title
        }
        Words {
            width: parent.width
            visible: !sheet.typing
            text: cautions.beforeBake
            size: Theme.note
        }
        Words {
            width: parent.width
            visible: !sheet.typing && sheet.bake.needsLimit
            text: cautions.batteryPack
            bold: true
            size: Theme.note
        }
        NumberFields {
            width: parent.width
            visible: sheet.typing
            rows: sheet.bake.fields
            onChose: field => sheet.bake.chooseField(field)
        }
        FaceField {
            id: source
            objectName: "bakeSource"
            width: parent.width
            visible: sheet.typing && sheet.bake.limitTyped
            label: qsTr("Where the carmaker says so")
            placeholder: qsTr("repair manual, page")
            maximumLength: 120
        }
        TypedPad {
            objectName: "bakePad"
            width: parent.width
            height: implicitHeight
            visible: sheet.typing && !sheet.bake.limitTyped
            field: sheet.bake
        }
        SlabButton {
            objectName: "bakeKeep"
            width: parent.width
            height: implicitHeight
            visible: sheet.typing
            pressable: visible
            text: sheet.bake.keepText
            secondLine: sheet.bake.typed === "" && source.text.trim() === "" ? qsTr("say where the carmaker says so") : sheet.bake.keepSecond
            waits: {
                sheet.bake.keepSecond;
                return sheet.bake.keepWaits(source.text);
            }
            onClicked: sheet.bake.takeOrKeep(source.text)
        }
        PlainButton {
            objectName: "bakeLimit"
            width: parent.width
            height: implicitHeight
            visible: !sheet.typing
            pressable: visible
            text: sheet.bake.hasLimit ? qsTr("Read the carmaker's limit again") : qsTr("Read the carmaker's limit")
            onClicked: {
                sheet.bake.beginLimit();
                source.text = "";
                sheet.typing = true;
            }
        }
        SlabButton {
            objectName: "bakeMain"
            width: parent.width
            height: implicitHeight
            visible: !sheet.typing
            pressable: visible
            text: sheet.bake.mainText
            secondLine: sheet.bake.mainSecond
            waits: sheet.bake.mainWaits
            onClicked: sheet.bake.act()
            onRefused: {
                if (sheet.bake.needsLimit && !sheet.bake.hasLimit)
                    sheet.typing = true;
                else
                    sheet.whoAsked();
            }
        }
    }
}
