// OpenCarStepPromise: when it is promised: two usual answers, or a day and an hour.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: step

    required property OpenCarViewModel form

    spacing: Theme.gap

    Words {
        width: parent.width
        text: step.form.promised
        bold: true
        size: Theme.title
    }
    ChoiceFlow {
        width: parent.width
        model: step.form.promises
        question: qsTr("Promised")
        least: Math.min(180 * Theme.textScale, (width - Theme.gap) / 2)
        onPicked: key => step.form.choosePromise(key)
    }
    Words {
        width: parent.width
        topPadding: Theme.gap
        text: qsTr("Another day")
        bold: true
        size: Theme.note
        color: Theme.pencil
    }
    ChoiceFlow {
        width: parent.width
        model: step.form.days
        question: qsTr("Promised day")
        onPicked: key => step.form.chooseDay(key)
    }
    Words {
        width: parent.width
        topPadding: Theme.gap
        text: qsTr("Hour")
        bold: true
        size: Theme.note
        color: Theme.pencil
    }
    ChoiceFlow {
        width: parent.width
        model: step.form.times
        question: qsTr("Promised hour")
        least: 96
        onPicked: key => step.form.chooseTime(key)
    }
}
