// RawEntry: an entry as it lies in the log: whether its signature is good, the receipts of hubs, all
// fields as text that can be chosen and copied. timeLine: the view model, whose open entry is shown.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: raw

    required property TimeLineViewModel timeLine

    spacing: 12

    Words {
        width: parent.width
        text: qsTr("Raw record")
        bold: true
        Accessible.role: Accessible.Heading
    }
    Row {
        width: parent.width
        spacing: 10

        StateShape {
            id: shape
            kind: raw.timeLine.rawGood ? ShapeKind.Done : ShapeKind.Must
            size: 24
        }
        Words {
            objectName: "rawSignature"
            width: parent.width - shape.width - 10
            text: raw.timeLine.rawSignature
            bold: true
            color: raw.timeLine.rawGood ? Theme.ink : Theme.oxide
        }
    }
    Repeater {
        model: raw.timeLine.rawReceipts

        Words {
            required property string modelData
            objectName: "rawReceipt"
            width: raw.width
            text: modelData
        }
    }
    PlainButton {
        objectName: "rawCopy"
        width: parent.width
        height: implicitHeight
        text: qsTr("Copy all of it")
        onClicked: {
            raw.timeLine.copyRaw();
            copied.visible = true;
        }
    }
    Words {
        id: copied
        width: parent.width
        visible: false
        text: qsTr("Copied.")
        color: Theme.pencil

        Connections {
            target: raw.timeLine
            function onRawChanged() {
                copied.visible = false;
            }
        }
    }
    TextEdit {
        objectName: "rawText"
        x: 6  // room for the outline of the focus
        width: parent.width - 12
        text: raw.timeLine.rawText
        textFormat: TextEdit.PlainText
        readOnly: true
        selectByMouse: true
        selectByKeyboard: true
        activeFocusOnTab: true
        wrapMode: TextEdit.WrapAnywhere
        color: Theme.ink
        selectionColor: Theme.tape
        selectedTextColor: Theme.tapeInk
        font.family: Theme.family
        font.pixelSize: Theme.note
        Accessible.role: Accessible.StaticText
        Accessible.name: qsTr("The raw record: %1").arg(text)

        FocusRing {}
    }
}
