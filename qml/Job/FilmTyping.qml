// FilmTyping: the readings of one spot typed fast: what was typed, the big keys. film: the view model.
// A reading that is pressed is the one that the next number replaces. tight: no room for the spot, its
// mean and what is wrong: the owner says them.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: typing

    required property FilmViewModel film
    property bool tight: false
    readonly property bool partial: pad.typed !== "" && !pad.whole

    function clear() {
        pad.typed = "";
        pad.whole = false;
    }

    readonly property alias keysTop: pad.y

    implicitHeight: pad.y + pad.height

    Connections {
        target: typing.film
        function onRowTaken() {
            typing.clear();
        }
        function onTaken() {
            if (typing.partial)
                typing.clear();
        }
    }
    Binding {
        target: typing.film
        property: "pending"
        value: typing.partial ? pad.value : -1
    }
    Item {
        id: row
        width: parent.width
        height: Math.max(Theme.touch, drop.visible ? drop.implicitHeight : hint.implicitHeight)

        Flickable {
            id: typed
            visible: typing.film.readingCount > 0
            width: parent.width - drop.width - Theme.gap
            height: parent.height
            contentWidth: chips.width
            contentX: Math.max(0, contentWidth - width)
            clip: contentWidth > width
            interactive: contentWidth > width
            boundsBehavior: Flickable.StopAtBounds

            Row {
                id: chips
                spacing: Theme.gap

                Repeater {
                    model: typing.film.readings

                    PlainButton {
                        required property int key
                        required property string words
                        required property string spoken
                        required chosen

                        objectName: "reading_" + key
                        height: row.height
                        text: words
                        name: spoken
                        textSize: Theme.note
                        onClicked: typing.film.chooseReading(key)
                    }
                }
            }
        }
        PlainButton {
            id: drop
            objectName: "dropReading"
            visible: typing.film.readingCount > 0
            pressable: visible
            x: parent.width - width
            text: qsTr("Take out")
            textSize: Theme.note
            name: qsTr("Take the chosen reading out, or the last")
            onClicked: typing.film.dropReading()
        }
        Words {
            id: hint
            visible: typing.film.readingCount === 0
            y: (parent.height - height) / 2
            width: parent.width
            text: typing.film.hintWords
            size: Theme.note
            color: typing.film.gaugeWords !== "" ? Theme.oxide : Theme.pencil
        }
    }
    KeyPad {
        id: pad
        objectName: "filmPad"
        y: row.height + Theme.gap
        width: parent.width
        height: implicitHeight
        focus: true
        kind: typing.film.tenths ? KeyPad.Tenths : KeyPad.Digits
        digits: typing.film.digits
        label: typing.tight ? "" : qsTr("%1, %2").arg(typing.film.spotWords).arg(typing.film.meanWords)
        unitText: typing.film.unitWords
        unitKey: typing.film.unitKey
        wrong: typing.tight ? "" : typing.film.wrong
        onComplete: value => typing.film.type(value)
        onUnitPressed: {
            clear();
            typing.film.switchUnit();
        }

        function clear() {
            typing.clear();
        }
    }
}
