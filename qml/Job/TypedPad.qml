// TypedPad: the big keys for a view model that takes one number after the other. field: the object
// with fieldTitle, unitWords, digits, typed, wrong and type(value).
import QtQuick
import Jambline.Theme

KeyPad {
    id: pad

    required property var field

    digits: field.digits
    label: field.fieldTitle
    unitText: field.unitWords
    wrong: field.wrong
    onTypedChanged: field.typed = typed
    onComplete: value => field.type(value)

    Connections {
        target: pad.field
        function onTypedChanged() {
            if (pad.typed !== pad.field.typed)
                pad.typed = pad.field.typed;
        }
    }
}
