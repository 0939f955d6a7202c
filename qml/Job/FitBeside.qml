// FitBeside: what stands beside the answer of a panel: the latch that is to be checked, the picture of
// the witness marks, the edges, and what else is done. fit: the view model; over: the area that lists
// may cover. Signals: measureAsked(kind), shotAsked, movesAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: part

    required property FitViewModel fit
    required property Item over

    signal measureAsked(int kind)
    signal shotAsked
    signal movesAsked

    spacing: Theme.gap

    FactCard {
        objectName: "fitLatch"
        width: parent.width
        visible: part.fit.latchAsked
        title: qsTr("Latch and secondary catch")
        facts: qsTr("A hinge or a latch was moved. Both are checked before the road.")
        kind: ShapeKind.Must
        act: part.fit.mainAct === FitViewModel.CheckLatch || part.fit.shutWords !== "" ? "" : qsTr("Both checked")
        actName: qsTr("Latch and secondary catch checked")
        onActed: part.fit.checkLatch()
    }
    FactRow {
        objectName: "fitMarks"
        width: parent.width
        visible: part.fit.panel !== "" && part.fit.marksWords !== ""
        pressable: visible
        title: qsTr("Marks at hinges and latch")
        words: part.fit.marksWords
        shape: part.fit.marksShape
        onClicked: part.shotAsked()
    }
    Flow {
        id: edges
        width: parent.width
        visible: part.fit.panel !== ""
        spacing: Theme.gap

        Repeater {
            model: part.fit.panel !== "" ? part.fit.edges : null

            PlainButton {
                required property int key
                required property string title
                required property string words
                required chosen

                objectName: "fitEdge" + key
                width: Math.min(edges.width, Math.max(104, implicitWidth))
                height: implicitHeight
                beside: false
                text: title
                textSize: Theme.note
                secondLine: words
                name: qsTr("Edge to the %1, %2").arg(title.toLowerCase()).arg(words)
                onClicked: part.fit.chooseEdge(key)
            }
        }
    }
    ActRow {
        width: parent.width
        height: implicitHeight
        visible: part.fit.panel !== "" && part.fit.shutWords === ""

        PlainButton {
            objectName: "fitAgain"
            visible: part.fit.mainAct !== FitViewModel.Measure
            pressable: visible
            text: qsTr("Measure again")
            textSize: Theme.note
            onClicked: part.measureAsked(FitViewModel.Gap)
        }
        PlainButton {
            objectName: "fitWanted"
            text: qsTr("Wanted gap")
            textSize: Theme.note
            secondLine: part.fit.wantedWords
            beside: false
            onClicked: part.measureAsked(FitViewModel.Wanted)
        }
    }
    ActRow {
        width: parent.width
        height: implicitHeight
        visible: part.fit.panel !== "" && part.fit.shutWords === ""

        PlainButton {
            objectName: "fitRound"
            text: part.fit.rounds[part.fit.round]
            textSize: Theme.note
            name: qsTr("Round, %1").arg(text)
            onClicked: roundSheet.opened = true
        }
        PlainButton {
            objectName: "fitMoved"
            text: qsTr("Moved otherwise")
            textSize: Theme.note
            onClicked: part.movesAsked()
        }
        PlainButton {
            objectName: "fitFlushSum"
            visible: part.fit.flushKnown
            pressable: visible
            text: qsTr("Sum of the flush")
            textSize: Theme.note
            onClicked: part.fit.openSum(true)
        }
    }
    ChoiceSheet {
        id: roundSheet
        parent: part.over
        anchors.fill: parent
        title: qsTr("Which round is it")
        choices: part.fit.rounds
        current: part.fit.round
        onChose: row => part.fit.chooseRound(row)
    }
}
