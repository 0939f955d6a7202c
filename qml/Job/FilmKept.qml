// FilmKept: the readings that stand on this panel, by spot. A press opens one to type again. film: the
// view model. Signal: asked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: kept

    required property FilmViewModel film

    signal asked

    spacing: Theme.gap

    Words {
        width: parent.width
        visible: kept.film.keptCount > 0
        text: qsTr("Read so far")
        bold: true
        size: Theme.lead
        Accessible.role: Accessible.Heading
    }
    PaperCard {
        width: parent.width
        visible: kept.film.keptCount === 0
        dashed: true

        Words {
            width: parent.width
            text: qsTr("Nothing was read on this panel. It runs on the coats.")
            color: Theme.pencil
        }
    }
    Repeater {
        model: kept.film.kept

        PaperCard {
            id: line

            required property string key
            required property int index
            required property string title
            required property string words
            required property string mean
            required property string note
            required property string spoken
            required chosen

            objectName: "kept_" + index
            width: kept.width
            pressable: true
            name: spoken
            onClicked: {
                kept.film.correct(key);
                kept.asked();
            }

            Item {
                width: parent.width
                height: (taken.visible ? taken.y + taken.height : typed.y + typed.height)

                Words {
                    id: said
                    width: parent.width - figure.width - 12
                    text: line.title
                    mute: true
                    size: Theme.note
                    color: Theme.pencil
                }
                Words {
                    id: typed
                    y: said.height + 2
                    width: parent.width - figure.width - 12
                    text: line.words
                    mute: true
                }
                Words {
                    id: taken
                    y: typed.y + typed.height + 2
                    width: parent.width
                    visible: text !== ""
                    text: line.note
                    mute: true
                    size: Theme.note
                }
                Words {
                    id: figure
                    x: parent.width - width
                    width: natural
                    text: line.mean
                    mute: true
                    bold: true
                    size: Theme.lead
                    wrapMode: Text.NoWrap
                }
            }
        }
    }
    PlainButton {
        objectName: "filmTakeBack"
        width: parent.width
        visible: kept.film.correcting !== ""
        pressable: visible
        text: qsTr("Take this reading back")
        iconName: "undo"
        beside: true
        onClicked: kept.film.takeBack()
    }
}
