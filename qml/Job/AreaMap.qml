// AreaMap: the car's pattern, or one panel of it, with the areas of a round to scale and the marks.
// areas, rings (rows with key, number, spoken, xMm, yMm; null: none). Signal: ringAsked(key).
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

    signal ringAsked(string key)

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
            id: ring

            required property string key
            required property var model

            x: map.xPx(model.xMm)
            y: map.yPx(model.yMm)
            number: model.number
            size: 28
            Accessible.role: Accessible.Button
            Accessible.name: model.spoken
            Accessible.onPressAction: map.ringAsked(ring.key)
        }
    }
}
