// StageTile: one stage of the car: shape, name, state as a word, and a count. running: a blue foot.
// chosen: the main act is about this stage. Signal: clicked.
import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: tile

    required property string title
    required property int stageState
    required property string stateWords
    required property string count
    required property bool running
    required chosen
    property int place: 0
    property int places: 0

    readonly property string below: count === "" ? stateWords
        : stageState === CarViewModel.Done || stageState === CarViewModel.NotYet && !chosen ? count
        : qsTr("%1 · %2").arg(stateWords).arg(count)

    pressable: true
    quiet: stageState === CarViewModel.Done || stageState === CarViewModel.NotYet
    disputed: stageState === CarViewModel.Disputed
    foot: running
    footColor: Theme.blue
    padding: 10
    minimumHeight: Theme.touch
    name: qsTr("%1, %2, %3 of %4. Chooses the stage.").arg(title)
        .arg(count === "" ? stateWords : qsTr("%1, %2").arg(stateWords).arg(count)).arg(place).arg(places)

    Item {
        width: parent.width
        height: Math.max(mark.height, words.height)

        StateShape {
            id: mark
            anchors.verticalCenter: parent.verticalCenter
            kind: tile.stageState === CarViewModel.Done ? ShapeKind.Done
                : tile.stageState === CarViewModel.Running ? ShapeKind.Running
                : tile.stageState === CarViewModel.Paused ? ShapeKind.Paused
                : tile.stageState === CarViewModel.Disputed ? ShapeKind.Disputed
                : tile.stageState === CarViewModel.Waits ? ShapeKind.Waits : ShapeKind.NotYet
        }
        Column {
            id: words
            x: mark.width + 10
            width: parent.width - x
            anchors.verticalCenter: parent.verticalCenter
            spacing: 2

            Words {
                width: parent.width
                text: tile.title
                mute: true
                bold: tile.chosen
                size: Theme.lead
                color: tile.stageState === CarViewModel.NotYet && !tile.chosen ? Theme.pencil : Theme.ink
            }
            Words {
                width: parent.width
                text: tile.below
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
        }
    }
}
