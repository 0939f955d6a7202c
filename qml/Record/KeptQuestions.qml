// KeptQuestions: the questions that are kept, the way to keep the one that is asked, and to put back
// what was removed. filter: the view model. Signals: keepAsked, changeAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Flow {
    id: flow

    required property RecordFilterViewModel filter
    readonly property bool used: filter.keptCount > 0 || filter.mayKeep || filter.removed !== ""

    signal keepAsked
    signal changeAsked

    spacing: Theme.gap
    Accessible.role: Accessible.Grouping
    Accessible.name: qsTr("Kept questions")

    Repeater {
        model: flow.filter.kept

        PlainButton {
            id: one

            required property string called
            required property string words
            required chosen

            objectName: "kept_" + called
            width: Math.min(flow.width, Math.max(112, implicitWidth))
            height: implicitHeight
            text: called
            name: qsTr("%1. Asks: %2").arg(called).arg(words)
            textSize: Theme.note
            onClicked: flow.filter.open(called)
        }
    }
    PlainButton {
        objectName: "keptChange"
        width: Math.min(flow.width, implicitWidth)
        height: implicitHeight
        visible: flow.filter.chosen !== ""
        pressable: visible
        text: qsTr("Rename or remove")
        textSize: Theme.note
        onClicked: flow.changeAsked()
    }
    PlainButton {
        objectName: "keptKeep"
        width: Math.min(flow.width, implicitWidth)
        height: implicitHeight
        visible: flow.filter.mayKeep
        pressable: visible
        text: qsTr("Keep this question")
        textSize: Theme.note
        onClicked: flow.keepAsked()
    }
    PlainButton {
        objectName: "keptClear"
        width: Math.min(flow.width, implicitWidth)
        height: implicitHeight
        visible: flow.filter.asks
        pressable: visible
        text: qsTr("All cars again")
        textSize: Theme.note
        onClicked: flow.filter.clear()
    }
    PlainButton {
        objectName: "keptPutBack"
        width: Math.min(flow.width, implicitWidth)
        height: implicitHeight
        visible: flow.filter.removed !== ""
        pressable: visible
        text: qsTr("Put back \"%1\"").arg(flow.filter.removed)
        textSize: Theme.note
        iconName: "undo"
        beside: true
        onClicked: flow.filter.putBack()
    }
}
