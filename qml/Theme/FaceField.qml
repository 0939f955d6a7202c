// FaceField: one line of text or digits. label (above, and spoken), text (as typed), placeholder,
// wrong (words below with a shape; what was typed stays), readOnly, digitsOnly, iconName (before),
// tail (quiet words at the end), maximumLength. Signals: edited(text), accepted(text).
// 72 high (desk 44) plus label. focusField() puts the cursor in.
import QtQuick
import Jambline.Theme
import "said.js" as Said

FocusScope {
    id: field

    property string label: ""
    property alias text: input.text
    property string placeholder: ""
    property string wrong: ""
    property string tail: ""
    property string iconName: ""
    property bool readOnly: false
    property bool digitsOnly: false
    property bool bigText: false
    property alias maximumLength: input.maximumLength

    signal edited(string text)
    signal accepted(string text)

    function focusField() {
        input.forceActiveFocus();
    }

    implicitWidth: 380
    implicitHeight: stack.implicitHeight

    Column {
        id: stack
        width: parent.width
        spacing: 6

        Words {
            width: parent.width
            visible: text !== ""
            text: field.label
            mute: true
            bold: true
            size: Theme.note
            color: Theme.pencil
        }
        Rectangle {
            id: box
            width: parent.width
            height: Math.max(Theme.touch, input.implicitHeight + 16)
            radius: Theme.corner
            color: field.readOnly ? Theme.paper : Theme.sheet
            border.width: field.wrong !== "" ? 2 : input.activeFocus ? 1.8 : Theme.line
            border.color: field.wrong !== "" ? Theme.oxide : input.activeFocus ? Theme.ink
                        : field.readOnly ? Theme.chalk : Theme.edge

            MouseArea {
                anchors.fill: parent
                onClicked: input.forceActiveFocus()
            }
            Icon {
                id: icon
                x: 12
                anchors.verticalCenter: parent.verticalCenter
                visible: source !== ""
                source: field.iconName
            }
            TextInput {
                id: input
                objectName: "faceInput"
                focus: true
                activeFocusOnTab: true
                x: field.iconName === "" ? 14 : 46
                width: parent.width - x - 14 - (tail.visible ? tail.width + 10 : 0)
                height: parent.height
                verticalAlignment: TextInput.AlignVCenter
                clip: true
                color: Theme.ink
                selectionColor: Theme.tape
                selectedTextColor: Theme.tapeInk
                readOnly: field.readOnly
                inputMethodHints: field.digitsOnly ? Qt.ImhDigitsOnly : Qt.ImhNoPredictiveText
                font.family: Theme.family
                font.pixelSize: field.bigText ? Theme.screen : Theme.body
                font.bold: field.bigText
                Accessible.role: Accessible.EditableText
                Accessible.name: Said.join([field.label !== "" ? field.label : field.placeholder, field.wrong], ", ")
                onTextEdited: field.edited(text)
                onAccepted: field.accepted(text)
                validator: field.digitsOnly ? onlyDigits : null
            }
            RegularExpressionValidator {
                id: onlyDigits
                regularExpression: /[0-9]*/
            }
            Words {
                x: input.x
                width: input.width
                anchors.verticalCenter: parent.verticalCenter
                visible: input.text === "" && input.preeditText === ""
                text: field.placeholder
                mute: true
                color: Theme.pencil
            }
            Words {
                id: tail
                anchors.right: parent.right
                anchors.rightMargin: 14
                anchors.verticalCenter: parent.verticalCenter
                visible: text !== ""
                text: field.tail
                mute: true
                bold: true
                color: Theme.pencil
                wrapMode: Text.NoWrap
            }
            FocusRing {
                shown: input.activeFocus
            }
        }
        Row {
            visible: field.wrong !== ""
            width: parent.width
            spacing: 8

            StateShape {
                id: must
                kind: ShapeKind.Must
                size: 20
                ground: Theme.paper
            }
            Words {
                width: parent.width - must.width - 8
                text: field.wrong
                mute: true
                bold: true
                size: Theme.note
                color: Theme.oxide
            }
        }
    }
}
