// FitAnswer: what the gaps of a panel say: one sentence, how far it comes, and at each fastener how it
// is moved. A press opens the sum. fit: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: answer

    required property FitViewModel fit

    spacing: Theme.gap

    PaperCard {
        objectName: "fitAnswer"
        width: parent.width
        pressable: answer.fit.known
        must: answer.fit.answerShape === ShapeKind.Must
        name: answer.fit.known ? qsTr("%1. %2 Opens the sum.").arg(answer.fit.answerWord).arg(answer.fit.answerMore) : ""
        onClicked: answer.fit.openSum(false)

        Item {
            width: parent.width
            height: words.height

            StateShape {
                id: shape
                y: 2
                kind: answer.fit.answerShape
                key: "fit"
                size: 24
            }
            Column {
                id: words
                x: shape.width + 12
                width: parent.width - x
                spacing: 4

                Words {
                    objectName: "fitWord"
                    width: parent.width
                    text: answer.fit.answerWord
                    mute: answer.fit.known
                    bold: true
                }
                Words {
                    width: parent.width
                    visible: text !== ""
                    text: answer.fit.answerMore
                    mute: answer.fit.known
                    size: Theme.note
                    color: Theme.pencil
                }
                Words {
                    width: parent.width
                    visible: text !== ""
                    text: answer.fit.answerNote
                    mute: answer.fit.known
                    size: Theme.note
                }
            }
        }
    }
    Cautions {
        id: cautions
    }
    Words {
        objectName: "fitHeavy"
        width: parent.width
        visible: answer.fit.isHeavy
        text: cautions.lifting
        bold: true
        size: Theme.note
    }
    Repeater {
        model: answer.fit.moves

        Item {
            id: line

            required property string key
            required property string title
            required property string words
            required property bool atEnd

            objectName: "fitMove" + key
            width: answer.width
            height: Math.max(letter.height, said.height)

            Rectangle {
                id: letter
                width: Math.max(26, figure.height + 4)
                height: width
                radius: 2
                color: Theme.ink

                Words {
                    id: figure
                    anchors.centerIn: parent
                    text: line.key
                    bold: true
                    size: Theme.note
                    color: Theme.slabInk
                }
            }
            Column {
                id: said
                x: letter.width + 10
                width: parent.width - x
                spacing: 1

                Words {
                    width: parent.width
                    text: line.title
                    size: Theme.note
                    color: Theme.pencil
                }
                Words {
                    width: parent.width
                    visible: text !== ""
                    text: line.atEnd ? qsTr("%1; its slot is at the end").arg(line.words) : line.words
                    bold: true
                    color: line.atEnd ? Theme.oxide : Theme.ink
                }
            }
        }
    }
}
