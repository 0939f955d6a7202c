// RoundCard: one round of the plan: shape and word of where it stands, its panels, areas, minutes,
// pads and towels; below it what comes between it and the next. Signal: clicked (shows its areas).
import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: round

    required property string title
    required property string panels
    required property string facts
    required property int roundState
    required property string stateWords
    required property string between
    property bool shown: false

    signal clicked

    spacing: 4

    PaperCard {
        width: parent.width
        pressable: true
        chosen: round.shown
        padding: 10
        name: qsTr("%1, %2, %3. %4. Shows its areas.").arg(round.title).arg(round.stateWords).arg(round.panels).arg(round.facts)
        onClicked: round.clicked()

        Item {
            width: parent.width
            height: Math.max(mark.height, words.height)

            StateShape {
                id: mark
                anchors.verticalCenter: parent.verticalCenter
                size: 26
                kind: round.roundState === PlanViewModel.Done ? ShapeKind.Done
                    : round.roundState === PlanViewModel.Now ? ShapeKind.Waits : ShapeKind.NotYet
            }
            Column {
                id: words
                x: mark.width + 12
                width: parent.width - x
                anchors.verticalCenter: parent.verticalCenter
                spacing: 2

                Words {
                    width: parent.width
                    text: qsTr("%1, %2").arg(round.title).arg(round.stateWords)
                    mute: true
                    bold: true
                    size: Theme.lead
                }
                Words {
                    width: parent.width
                    text: round.panels
                    mute: true
                }
                Words {
                    width: parent.width
                    visible: text !== ""
                    text: round.facts
                    mute: true
                    size: Theme.note
                    color: Theme.pencil
                }
            }
        }
    }
    Words {
        x: 12
        width: parent.width - 24
        visible: text !== ""
        text: round.between
        size: Theme.note
        color: Theme.pencil
    }
}
