// FilmMap: the panel to scale with the spots that are read. A tap puts the spot there, on a spot it
// chooses that one. film, inspect: the view models.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

PatternMap {
    id: map

    required property FilmViewModel film

    objectName: "filmMap"
    panel: film.panel
    inset: 14
    onTapped: (xMm, yMm) => film.placeSpot(xMm, yMm)

    Repeater {
        model: map.film.spots

        Pressable {
            id: spot

            required property int key
            required property bool placed
            required property real xMm
            required property real yMm
            required property bool chosen
            required property string words
            required property string spoken

            objectName: "spot_" + key
            visible: placed
            x: map.xPx(xMm) - width / 2
            y: map.yPx(yMm) - height / 2
            width: Theme.touch
            height: Theme.touch
            name: spoken
            onClicked: map.film.chooseSpot(key)

            Rectangle {
                anchors.centerIn: parent
                width: Math.max(28, number.height + 6)
                height: width
                radius: 4
                color: spot.chosen ? Theme.ink : Theme.sheet
                border.width: Theme.line
                border.color: Theme.ink

                Words {
                    id: number
                    anchors.centerIn: parent
                    text: spot.key
                    mute: true
                    bold: true
                    size: Theme.note
                    color: spot.chosen ? Theme.slabInk : Theme.ink
                }
            }
        }
    }
}
