// FitMap: the panel to scale with the edges that have a gap, their points, and its fasteners with an
// arrow as long as the move. A tap takes the nearest point, or makes one on the edge.
// fit, inspect: the view models. Signal: pointTaken.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

PatternMap {
    id: map

    required property FitViewModel fit

    // The points stand on the outline: a fastener's letter keeps off it.
    readonly property real keepOff: 28

    signal pointTaken

    objectName: "fitMap"
    panel: fit.panel
    inset: 24
    onTapped: (xMm, yMm) => {
        if (fit.tap(xMm, yMm, 36 / pattern.pxPerMm))
            pointTaken();
    }

    FitItem {
        anchors.fill: parent
        fit: map.fit
        originX: map.pattern.originX
        originY: map.pattern.originY
        pxPerMm: map.pattern.pxPerMm
        pxPerMove: Math.max(12, Math.min(20, map.width / 26))
        handle: 13
        margin: map.keepOff
        here: Theme.blue
        quiet: Theme.pencil
        ink: Theme.ink
    }
    Repeater {
        model: map.fit.moves

        Rectangle {
            id: fastener

            required property string key
            required property real xMm
            required property real yMm

            readonly property point at: map.fit.insideOf(xMm, yMm, map.keepOff / map.pattern.pxPerMm)

            x: map.xPx(at.x) - width / 2
            y: map.yPx(at.y) - height / 2
            width: Math.max(24, letter.height + 4)
            height: width
            radius: 2
            color: Theme.ink

            Words {
                id: letter
                anchors.centerIn: parent
                text: fastener.key
                mute: true
                bold: true
                size: Theme.note
                color: Theme.slabInk
            }
        }
    }
    Repeater {
        model: map.fit.spots

        FitSpot {
            on: map
            onAsked: key => {
                map.fit.chooseSpot(key);
                map.pointTaken();
            }
        }
    }
}
