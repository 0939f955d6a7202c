// QuestionCards: the rows of the answer as cards that open to their cars. ask: the view model.
// Signal: rowAsked(key).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: cards

    required property QuestionViewModel ask
    property bool listed: true  // not `visible`: that also changes while the window is laid out

    signal rowAsked(string key)

    spacing: Theme.gap
    Accessible.role: Accessible.List
    Accessible.name: qsTr("%1, %2").arg(ask.title).arg(ask.timeTitle)

    Repeater {
        model: cards.listed ? cards.ask.rows : null

        PaperCard {
            id: card

            required property int index
            required property string key
            required property string title
            required property string numbers
            required property string note
            required property bool alarm
            required property string cars
            required property string spoken

            objectName: "questionRow" + index
            width: cards.width
            pressable: cars !== ""
            must: alarm
            name: cars === "" ? spoken : qsTr("%1, opens %2").arg(spoken).arg(cars)
            onClicked: cards.rowAsked(key)

            Item {
                width: parent.width
                height: Math.max(words.height, number.height)

                Column {
                    id: words
                    width: parent.width - number.width - 12
                    anchors.verticalCenter: parent.verticalCenter

                    Words {
                        width: parent.width
                        text: card.title
                        mute: true
                        bold: true
                    }
                    Words {
                        width: parent.width
                        visible: text !== ""
                        text: card.note
                        mute: true
                        size: Theme.note
                        color: Theme.pencil
                    }
                }
                Words {
                    id: number
                    width: Math.min(natural, parent.width * 0.5)
                    anchors.right: parent.right
                    anchors.verticalCenter: parent.verticalCenter
                    horizontalAlignment: Text.AlignRight
                    text: card.numbers
                    mute: true
                    bold: true
                    color: card.alarm ? Theme.oxide : Theme.ink
                }
            }
        }
    }
}
