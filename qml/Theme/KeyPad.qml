// KeyPad: digits for gloves. kind: KeyPad.Digits; Tenths, Hours, Hundredths put the point themselves
// (39 gives 3.9 or 0.39), Clock the colon between minutes and seconds (500 gives 5:00). digits: how many are expected; at the last one complete() is
// sent and the next key starts a new number. typed: the raw digits (settable); shown: as written;
// value: whole number typed, without point or colon, -1 when empty.
// unitText: shown behind the number; unitKey: words on the unit key ("" hides it).
// hidden: dots instead of digits, also spoken. wrong: words said under the number. Signals: complete(value), unitPressed.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme

FocusScope {
    id: pad

    enum Kind { Digits, Tenths, Hours, Hundredths, Clock }

    property int kind: KeyPad.Digits
    property int digits: 2
    property string label: ""
    property string typed: ""
    property string unitText: ""
    property string unitKey: ""
    property string wrong: ""
    property bool hidden: false
    property bool whole: false
    readonly property int value: typed === "" ? -1 : Number(typed)
    readonly property string shown: {
        if (hidden)
            return "•".repeat(typed.length);
        if (typed === "" || kind === KeyPad.Digits)
            return typed;
        const after = kind === KeyPad.Hundredths || kind === KeyPad.Clock ? 2 : 1;
        const full = typed.padStart(after + 1, "0");
        return Number(full.slice(0, -after)) + (kind === KeyPad.Clock ? ":" : ".") + full.slice(-after);
    }

    signal complete(int value)
    signal unitPressed

    function type(digit: string) {
        const before = whole || typed.length >= digits ? "" : typed;
        whole = false;
        typed = before + digit;
        if (typed.length >= digits) {
            whole = true;
            complete(value);
        }
    }

    function erase() {
        whole = false;
        typed = typed.slice(0, -1);
    }

    implicitWidth: 3 * 88 + 2 * Theme.gap
    implicitHeight: face.height + Theme.gap + keys.height
    Accessible.role: Accessible.Grouping
    Accessible.name: label === "" ? qsTr("Number keys") : label

    Keys.onPressed: event => {
        if (event.key >= Qt.Key_0 && event.key <= Qt.Key_9) {
            pad.type(String(event.key - Qt.Key_0));
            event.accepted = true;
        } else if (event.key === Qt.Key_Backspace) {
            pad.erase();
            event.accepted = true;
        }
    }

    PaperCard {
        id: face
        width: parent.width
        must: pad.wrong !== ""
        name: pad.shown === "" ? qsTr("%1, empty").arg(pad.label)
            : pad.hidden ? qsTr("%1 digits typed").arg(pad.typed.length) : qsTr("%1 %2").arg(pad.shown).arg(pad.unitText)

        Column {
            width: parent.width
            spacing: 2

            Words {
                width: parent.width
                visible: text !== ""
                text: pad.label
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
            Row {
                spacing: 8

                TimeText {
                    id: figure
                    objectName: "padFigure"
                    text: pad.shown === "" ? "–" : pad.shown
                    size: Theme.place
                    bold: true
                    color: pad.shown === "" ? Theme.pencil : Theme.ink
                    mute: true
                }
                Words {
                    height: figure.height
                    verticalAlignment: Text.AlignVCenter
                    text: pad.unitText
                    mute: true
                    color: Theme.pencil
                }
            }
            Row {
                visible: pad.wrong !== ""
                width: parent.width
                spacing: 8

                StateShape {
                    id: must
                    kind: ShapeKind.Must
                    size: 20
                }
                Words {
                    width: parent.width - must.width - 8
                    text: pad.wrong
                    bold: true
                    size: Theme.note
                    color: Theme.oxide
                }
            }
        }
    }
    Grid {
        id: keys

        readonly property real keyWidth: Math.max(Theme.touch, (pad.width - 2 * spacing) / 3)

        y: face.height + Theme.gap
        columns: 3
        spacing: Theme.gap

        Repeater {
            model: ["1", "2", "3", "4", "5", "6", "7", "8", "9", "unit", "0", "erase"]

            PlainButton {
                id: key

                required property string modelData
                readonly property bool isUnit: modelData === "unit"
                readonly property bool isErase: modelData === "erase"

                objectName: "key_" + modelData
                width: keys.keyWidth
                height: implicitHeight
                text: isUnit ? pad.unitKey : isErase ? "" : modelData
                name: isErase ? qsTr("Erase the last digit") : isUnit ? qsTr("Unit, %1").arg(pad.unitKey) : modelData
                iconName: isErase ? "erase" : ""
                textSize: isUnit ? Theme.body : Theme.screen
                opacity: isUnit && pad.unitKey === "" ? 0 : 1
                pressable: opacity > 0
                onClicked: {
                    if (isErase)
                        pad.erase();
                    else if (isUnit)
                        pad.unitPressed();
                    else
                        pad.type(modelData);
                }
            }
        }
    }
}
