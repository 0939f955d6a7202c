// FilmRow: the readings of one spot typed in a row, for a keyboard: "112 115 118", Enter keeps them.
// film: the view model. What was typed stays when it is refused.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: row

    required property FilmViewModel film

    spacing: Theme.gap

    Connections {
        target: row.film
        function onRowTaken() {
            field.text = "";
        }
    }
    FaceField {
        id: field
        objectName: "filmField"
        width: parent.width
        label: qsTr("%1, three readings or more").arg(row.film.spotWords)
        placeholder: row.film.tenths ? qsTr("4.4 4.5 4.6") : qsTr("112 115 118")
        tail: row.film.unitWords
        wrong: row.film.wrong
        onAccepted: text => row.film.typeRow(text)
    }
    PlainButton {
        objectName: "filmUnit"
        width: parent.width
        text: qsTr("Type in %1").arg(row.film.unitKey)
        onClicked: row.film.switchUnit()
    }
    SlabButton {
        objectName: "filmKeepRow"
        width: parent.width
        height: implicitHeight
        text: qsTr("Keep spot %1, next spot").arg(row.film.spot)
        onClicked: row.film.typeRow(field.text)
    }
}
