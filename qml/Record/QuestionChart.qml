// QuestionChart: the answer in one sentence, what it rests on, and its bars with a legend.
// ask: the view model.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: page

    required property QuestionViewModel ask

    spacing: Theme.gap

    Words {
        objectName: "questionAnswer"
        width: parent.width
        visible: text !== ""
        text: page.ask.answer
        bold: true
        size: Theme.title
        Accessible.role: Accessible.Heading
    }
    Words {
        objectName: "questionRestsOn"
        width: parent.width
        visible: text !== ""
        text: page.ask.restsOn
        size: Theme.note
        color: Theme.pencil
    }
    PaperCard {
        width: parent.width
        visible: page.ask.barCount > 0

        Column {
            width: parent.width
            spacing: 12

            Words {
                width: parent.width
                text: page.ask.chartName
                bold: true
            }
            Flow {
                width: parent.width
                spacing: 18

                Row {
                    spacing: 8
                    visible: page.ask.ghostName !== ""

                    Rectangle {
                        width: 28
                        height: 10
                        anchors.verticalCenter: parent.verticalCenter
                        color: Theme.ink
                    }
                    Words {
                        width: natural
                        text: page.ask.barName
                        size: Theme.note
                    }
                }
                Row {
                    spacing: 8
                    visible: page.ask.ghostName !== ""

                    Hatch {
                        width: 28
                        height: 20
                        anchors.verticalCenter: parent.verticalCenter
                    }
                    Words {
                        width: natural
                        text: page.ask.ghostName
                        size: Theme.note
                    }
                }
            }
            PairBars {
                objectName: "questionBars"
                width: parent.width
                name: page.ask.chartName
                model: page.ask.bars
                most: page.ask.most
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: page.ask.moreWords
                size: Theme.note
                color: Theme.pencil
            }
        }
    }
}
