// AreaMap: the car's pattern, or one panel of it, with the areas of a round to scale and the marks.
// areas, rings (rows with key, number, xMm, yMm; null: none): silent, a list beside says them.
// words: what the drawing shows, for the reader.
pragma ComponentBehavior: Bound
import QtQuick
import Jambline.Theme
import Jambline.Screens

PatternMap {
    id: map

    required property RoundAreas areas
    property var rings: null
    property string words: ""

    Accessible.role: Accessible.Graphic
    Accessible.name: words

    AreaItem {
        anchors.fill: parent
        areas: map.areas
        originX: map.pattern.originX
        originY: map.pattern.originY
        pxPerMm: map.pattern.pxPerMm
        fill: Theme.blue
        line: Theme.blue
    }
    Repeater {
        model: map.rings

        PencilRing {
            required property var model

            x: map.xPx(model.xMm)
            y: map.yPx(model.yMm)
            number: model.number
            key: model.key
            size: 18
            Accessible.ignored: true
        }
    }
}
