// PanelMarks: one panel large with its rings, the cross of the keyboard, the scale bar and the small
// map. Signals: mapAsked (the small map was tapped), filmAsked (the film of the panel).
// moving: the next tap says where the chosen mark goes.
pragma ComponentBehavior: Bound
import QtQuick
import Jambline.Theme
import Jambline.Screens

Item {
    id: area

    required property InspectViewModel inspect
    property bool moving: false
    property bool crossed: false
    property point cross: Qt.point(0, 0)
    property string dragged: ""
    property point dragMm: Qt.point(0, 0)
    readonly property alias view: map
    // Nothing lies on the panel: the small map stands beside it or below it, where the panel is
    // drawn larger, and the scale bar below.
    // Beside the map; a mark's number may hang over the panel's edge.
    readonly property real side: Math.max(whole.width, film.width) + (Theme.textScale > 1.2 ? 24 : 0)
    readonly property bool below: fit(width, height - whole.height) >= fit(width - side, height - foot.height)

    signal mapAsked
    signal filmAsked

    function tap(xMm: real, yMm: real) {
        if (moving) {
            moving = false;
            inspect.moveMark(inspect.chosenMark, xMm, yMm);
            return;
        }
        const near = inspect.markNear(xMm, yMm);
        if (near === "") {
            inspect.placeMark(xMm, yMm);
        } else if (inspect.ringHoldsMany(near)) {
            const part = inspect.ringBox(near);
            map.pattern.showPart(part.x, part.y, part.width, part.height);
        } else {
            inspect.choose(near === inspect.chosenMark ? "" : near);
        }
    }
    function fit(width_px: real, height_px: real): real {
        return Math.min((width_px - 2 * map.inset) / map.pattern.aspect, height_px - 2 * map.inset);
    }
    function startCross() {
        const at = map.pattern.toMm(map.width / 2, map.height / 2);
        cross = Qt.point(Math.round(at.x / 10) * 10, Math.round(at.y / 10) * 10);
        crossed = true;
    }

    PatternMap {
        id: map
        width: parent.width - (area.below ? 0 : area.side)
        height: parent.height - (area.below ? whole.height : foot.height)
        inspect: area.inspect
        panel: area.inspect.panel
        inset: Math.max(10, Math.min(30, area.height * 0.07))
        grips: (xMm, yMm) => {
            const near = area.inspect.markNear(xMm, yMm);
            return near !== "" && !area.inspect.ringHoldsMany(near) && !area.inspect.readOnly ? near : "";
        }
        onTapped: (xMm, yMm) => area.tap(xMm, yMm)
        onDragging: (key, xMm, yMm) => {
            area.dragged = key;
            area.dragMm = Qt.point(xMm, yMm);
        }
        onDropped: (key, xMm, yMm) => {
            area.dragged = "";
            if (key !== "")
                area.inspect.moveMark(key, xMm, yMm);
        }

        Words {
            visible: map.pattern.glassSpot.x > 0
            x: map.pattern.glassSpot.x - width / 2
            y: map.pattern.glassSpot.y - height / 2
            text: qsTr("glass")
            size: Theme.note
            color: Theme.pencil
        }
        Repeater {
            model: area.inspect.marks

            PencilRing {
                id: ring

                required property string mark
                required property int index
                required property var model
                readonly property bool held: area.dragged === mark

                x: map.xPx(held ? area.dragMm.x : ring.model.xMm)
                y: map.yPx(held ? area.dragMm.y : ring.model.yMm)
                visible: ring.model.shown
                together: ring.model.together
                number: ring.model.number
                ended: ring.model.ended
                key: mark
                chosen: area.inspect.chosenMark === mark
                Accessible.role: Accessible.Button
                Accessible.name: together > 1 ? qsTr("%1 marks close together").arg(together) : ring.model.spoken
                Accessible.focusable: true
                Accessible.onPressAction: area.inspect.choose(mark)
                activeFocusOnTab: true
                Keys.onReturnPressed: area.inspect.choose(mark)
                Keys.onSpacePressed: area.inspect.choose(mark)

                FocusRing {
                    anchors.margins: -24
                    corner: 19
                }

                Component.onCompleted: draw()
            }
        }
        PencilRing {
            visible: map.pressed && area.dragged === ""
            x: map.fingerX
            y: map.fingerY
            key: "finger"
            pressed: true
        }
        Item {
            visible: area.crossed
            x: map.xPx(area.cross.x)
            y: map.yPx(area.cross.y)
            Accessible.role: Accessible.Indicator
            Accessible.name: qsTr("Cross, %1").arg(area.inspect.placeWords(area.cross.x, area.cross.y))

            Rectangle { x: -22; y: -1.5; width: 44; height: 3; color: Theme.blue }
            Rectangle { x: -1.5; y: -22; width: 3; height: 44; color: Theme.blue }
        }
        Rectangle {
            x: (map.width - width) / 2
            y: Math.min(map.height - height - 4, map.height * 0.62)
            width: Math.min(map.width - 32, Math.max(tip.natural, how.natural) + 24)
            height: tip.height + (how.visible ? how.height + 4 : 0) + 16
            visible: area.inspect.panelMarkCount === 0 && map.pattern.zoom < 1.01 && area.inspect.look === PanelLook.NotYet && area.inspect.dirt === 0
            radius: Theme.corner
            color: Theme.paper
            opacity: 0.86

            Words {
                id: tip
                x: 12
                y: 8
                width: parent.width - 24
                horizontalAlignment: Text.AlignHCenter
                text: qsTr("Tap where the nib is")
                bold: true
            }
            Words {
                id: how
                visible: map.height > 3 * height
                x: 12
                y: tip.y + tip.height + 4
                width: parent.width - 24
                horizontalAlignment: Text.AlignHCenter
                text: qsTr("On the car: a low-tack tape dot or water-removable marker beside, not on, the nib")
                size: Theme.small
                color: Theme.pencil
            }
        }
    }
    Item {
        id: foot
        y: parent.height - height
        width: parent.width
        height: Math.max(30, barText.height + 8)

        Item {
            id: bar
            x: 8
            y: 12
            width: area.inspect.barMm * map.pattern.pxPerMm
            height: 10

            Rectangle { y: 4; width: parent.width; height: 2; color: Theme.ink }
            Rectangle { width: 2; height: 10; color: Theme.ink }
            Rectangle { x: parent.width - 2; width: 2; height: 10; color: Theme.ink }
        }
        Words {
            id: barText
            x: bar.x + bar.width + 8
            y: bar.y + 5 - height / 2
            wrapMode: Text.NoWrap
            text: area.inspect.barWords
            size: Theme.note
            color: Theme.pencil
        }
    }
    PlainButton {
        id: film
        objectName: "panelFilm"
        x: area.below ? whole.x - width - Theme.gap : area.width - width
        y: area.below ? whole.y : Math.max(0, whole.y - height - Theme.gap)
        width: Math.max(whole.width, implicitWidth)
        height: whole.height
        beside: false
        textSize: Theme.note
        shape: area.inspect.filmShape
        text: qsTr("Film")
        name: qsTr("Film, %1. Opens the readings.").arg(area.inspect.filmWords)
        onClicked: area.filmAsked()
    }
    Pressable {
        id: whole
        objectName: "smallMap"
        x: parent.width - width
        y: parent.height - height
        width: 72
        height: 72
        name: qsTr("The whole car. Opens the map.")
        onClicked: area.mapAsked()

        PatternMap {
            anchors { right: parent.right; bottom: parent.bottom; rightMargin: 2; bottomMargin: 2 }
            width: 48
            height: 56
            inspect: area.inspect
            chosen: area.inspect.panel
            still: true
            inset: 1
        }
    }
    Binding {
        target: area.inspect
        property: "pxPerMm"
        value: map.pattern.pxPerMm
    }
}
