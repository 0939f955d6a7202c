// FilmSaid: what the readings, or the coats, say of a panel's clear: one word, how much there is, what
// it rests on. film: the view model. A press opens the sum.
import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: said

    required property FilmViewModel film

    objectName: "filmSum"
    pressable: film.known
    must: film.wordShape === ShapeKind.Must
    name: qsTr("%1, %2. %3. %4. Opens the sum.").arg(film.wordText).arg(film.rangeWords).arg(film.restsWords).arg(film.limitWords)
    onClicked: film.openSum()

    Item {
        width: parent.width
        height: Math.max(section.visible ? section.height : 0, words.height)

        FilmSection {
            id: section
            visible: said.film.known
            width: 34 + 10 + 54 * Theme.textScale
            height: Math.max(88, words.height - 4)
            clearUm: said.film.clearUm
            afterUm: said.film.afterUm
            keepUm: said.film.keepUm
            keepWords: said.film.keepWords
        }
        Column {
            id: words
            x: section.visible ? section.width + 8 : 0
            width: parent.width - x
            spacing: 3

            Row {
                width: parent.width
                spacing: 8

                StateShape {
                    id: shape
                    kind: said.film.wordShape
                    key: "film"
                    size: 22
                    anchors.verticalCenter: parent.verticalCenter
                }
                Words {
                    width: parent.width - shape.width - 8
                    text: said.film.wordText
                    mute: true
                    bold: true
                    size: Theme.lead
                }
            }
            Words {
                width: parent.width
                text: said.film.rangeWords
                mute: true
            }
            Words {
                width: parent.width
                text: said.film.restsWords
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
            Words {
                width: parent.width
                text: said.film.limitWords
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
        }
    }
}
