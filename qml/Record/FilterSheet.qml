// FilterSheet: the choices of one part of the record's sentence, or the parts that can be added.
// filter: the view model; key: the part, "add" for a new one. ask(key) opens it.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property RecordFilterViewModel filter
    property string key: ""
    property var rows: []
    property bool many: false
    property bool isSet: false
    readonly property bool adding: key === "add"
    readonly property bool typed: key === "color"

    function ask(part: string) {
        key = part;
        many = filter.isMany(part);
        show();
        opened = true;
        if (typed) {
            color.text = filter.color;
            color.focusField();
        }
    }

    function show() {
        title = filter.titleOf(key);
        rows = filter.choices(key);
        isSet = filter.isSet(key);
    }

    function take(row: int) {
        if (adding) {
            ask(rows[row].key);
            return;
        }
        filter.choose(key, row);
        if (many)
            show();
        else
            close();
    }

    Column {
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gutter

        FaceField {
            id: color
            objectName: "filterColor"
            width: parent.width
            visible: sheet.typed
            label: qsTr("Color")
            placeholder: qsTr("Name or code, as far as you know it")
            maximumLength: 60
            onAccepted: text => {
                sheet.filter.sayColor(text);
                sheet.close();
            }
        }
        PlainButton {
            objectName: "filterColorSaid"
            width: parent.width
            height: implicitHeight
            visible: sheet.typed
            pressable: visible
            text: qsTr("Only cars of this color")
            onClicked: {
                sheet.filter.sayColor(color.text);
                sheet.close();
            }
        }
        Words {
            width: parent.width
            visible: sheet.many
            text: qsTr("Of several that are chosen, one is enough.")
            size: Theme.note
            color: Theme.pencil
        }
        Repeater {
            model: sheet.rows

            PlainButton {
                required property int index
                required property var modelData

                objectName: "filterChoice_" + (modelData.key ?? index)
                width: parent?.width ?? 0
                height: implicitHeight
                text: modelData.text
                chosen: modelData.chosen ?? false
                onClicked: sheet.take(index)
            }
        }
        PlainButton {
            objectName: "filterLeaveOut"
            width: parent.width
            height: implicitHeight
            visible: sheet.isSet
            pressable: visible
            text: qsTr("Leave this out")
            iconName: "undo"
            beside: true
            onClicked: {
                sheet.filter.leaveOut(sheet.key);
                sheet.close();
            }
        }
    }
}
