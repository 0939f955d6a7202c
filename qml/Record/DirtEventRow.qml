// DirtEventRow: one event at a booth and the dirt after it against before it; a press opens the
// chances. The delegate of DirtRows: its fields come from the model's roles.
import QtQuick
import Jambline.Theme

PaperCard {
    id: row

    required property string title
    required property string stateWords
    required property string said
    required property string details
    required property bool strong
    required property bool tooFew
    required property real ratio
    required property real low
    required property real high
    required property bool unbounded
    property bool opened: false

    objectName: "dirtEvent"
    pressable: true
    quiet: true
    name: qsTr("%1: %2. %3. %4").arg(title).arg(stateWords).arg(said)
        .arg(opened ? details : qsTr("Opens the chances."))
    onClicked: opened = !opened

    Column {
        width: parent.width
        spacing: 4

        Item {
            width: parent.width
            height: Math.max(title.height, state.y + state.height)

            Words {
                id: title
                width: state.below ? parent.width : parent.width - state.width - 12
                text: row.title
                mute: true
                bold: true
            }
            Row {
                id: state

                readonly property bool below: title.natural + shape.width + word.natural + 24 > parent.width

                x: below ? 0 : parent.width - width
                y: below ? title.height + 2 : 0
                spacing: 6

                Icon {
                    id: shape
                    anchors.verticalCenter: parent.verticalCenter
                    visible: row.strong
                    size: 18
                    source: "flag"
                }
                Words {
                    id: word
                    width: natural
                    text: row.stateWords
                    mute: true
                    bold: row.strong
                    color: row.strong ? Theme.ink : Theme.pencil
                }
            }
        }
        EffectLine {
            width: parent.width
            name: row.said
            ratio: row.ratio
            low: row.low
            high: row.high
            unbounded: row.unbounded
            tooFew: row.tooFew
            strong: row.strong
            lowWords: qsTr("less")
            middleWords: qsTr("the same")
            highWords: qsTr("more")
            Accessible.ignored: true
        }
        Words {
            width: parent.width
            text: row.said
            mute: true
        }
        Words {
            width: parent.width
            visible: row.opened
            text: row.details
            mute: true
            size: Theme.note
            color: Theme.pencil
        }
    }
}
