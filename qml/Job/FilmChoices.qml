// FilmChoices: when the film is read and with what gauge, as two buttons that open their lists.
// film: the view model; over: the area that the lists may cover.
import QtQuick
import Jambline.Theme
import Jambline.Screens

ActRow {
    id: choices

    required property FilmViewModel film
    required property Item over

    PlainButton {
        objectName: "filmWhen"
        text: choices.film.whens[choices.film.when]
        name: qsTr("When, %1").arg(text)
        textSize: Theme.note
        onClicked: whenSheet.opened = true
    }
    PlainButton {
        objectName: "filmGauge"
        text: choices.film.gauges[choices.film.gauge]
        name: qsTr("Gauge, %1").arg(text)
        textSize: Theme.note
        onClicked: gaugeSheet.opened = true
    }
    ChoiceSheet {
        id: whenSheet
        parent: choices.over
        anchors.fill: parent
        title: qsTr("When is it read")
        choices: choices.film.whens
        current: choices.film.when
        onChose: row => choices.film.chooseWhen(row)
    }
    ChoiceSheet {
        id: gaugeSheet
        parent: choices.over
        anchors.fill: parent
        title: qsTr("What the gauge reads")
        choices: choices.film.gauges
        current: choices.film.gauge
        onChose: row => choices.film.chooseGauge(row)
    }
}
