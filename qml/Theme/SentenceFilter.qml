// SentenceFilter: a filter said as one sentence whose underlined words open lists.
// parts: rows with `text` and `key` (key "" = fixed words; else a word that can be pressed) and
// optional `changed` (bold line: not the default). openKey: the word whose list is open.
// tail: quiet words at the end (the count). Signals: wordPressed(key); wordDropped(key), by Delete
// on a word. focusWord(key) gives it the focus. Lines 72 high, desk 44.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import "said.js" as Said

Flow {
    id: filter

    property var parts: []
    property string openKey: ""
    property string tail: ""

    signal wordPressed(string key)
    signal wordDropped(string key)

    function drop(key: string) {
        if (key !== "")
            wordDropped(key);
    }

    function focusWord(key: string) {
        for (let at = 0; at < words.count; ++at) {
            const word = words.itemAt(at) as Pressable;
            if (word !== null && parts[at].key === key)
                word.forceActiveFocus();
        }
    }

    spacing: 10
    Accessible.role: Accessible.Grouping
    Accessible.name: Said.join(Array.from(parts, part => part.text).concat(tail), " ")

    Repeater {
        id: words
        model: filter.parts

        Pressable {
            id: word

            required property var modelData
            readonly property bool live: modelData.key !== ""

            objectName: "word_" + modelData.key
            pressable: live
            name: live ? qsTr("%1, opens the choices").arg(modelData.text) : ""
            width: Math.min(filter.width, Math.max(letters.natural, live ? Theme.touch : 0))
            height: Math.max(Theme.touch, letters.height + 16)
            onClicked: filter.wordPressed(modelData.key)
            Keys.onDeletePressed: filter.drop(modelData.key)

            Words {
                id: letters
                width: parent.width
                anchors.verticalCenter: parent.verticalCenter
                text: word.modelData.text
                mute: word.live
                bold: word.live
                size: Theme.lead
                color: word.live ? Theme.ink : Theme.pencil
            }
            Rectangle {
                visible: word.live
                y: letters.y + letters.height + 1
                width: Math.min(letters.natural, parent.width)
                height: word.modelData.changed || filter.openKey === word.modelData.key ? 3 : 1.5
                color: Theme.ink
            }
        }
    }
    Words {
        visible: text !== ""
        // On a line of its own it needs no room for a finger.
        height: x > 0 ? Math.max(Theme.touch, implicitHeight) : implicitHeight
        verticalAlignment: Text.AlignVCenter
        text: filter.tail
        size: Theme.note
        color: Theme.pencil
        wrapMode: Text.NoWrap
    }
}
