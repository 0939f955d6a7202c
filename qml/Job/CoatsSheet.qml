// CoatsSheet: what one mix was put on: panels on the pattern or by name, coats, flash, gun and tip.
// sprayed: the view model. Signal: whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens
import Jambline.Job

Sheet {
    id: sheet

    required property SprayedViewModel sprayed

    signal whoAsked

    function show(mix: string) {
        sprayed.startCoats(mix);
        gun.text = sprayed.gun;
        opened = true;
    }

    title: sprayed.coatsTitle

    Connections {
        target: sheet.sprayed
        function onCoatsKept() {
            sheet.close();
        }
    }
    CarTint {
        id: paint
        car: Theme.tape
        dark: Theme.dark
    }

    Column {
        id: form
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gap

        BodyDrawing {
            id: drawing
            objectName: "coatsPattern"
            width: parent.width
            height: 260
            shape: sheet.sprayed.body
            painted: sheet.sprayed.chosenPanels
            line: Theme.ink
            fill: paint.tint
            glass: Theme.edge
            Accessible.role: Accessible.Graphic
            Accessible.name: qsTr("%1 panels chosen").arg(sheet.sprayed.chosenPanels.length)

            TapHandler {
                gesturePolicy: TapHandler.DragThreshold
                onTapped: point => {
                    const panel = drawing.panelAt(point.position.x, point.position.y);
                    if (panel !== "")
                        sheet.sprayed.flipPanel(panel);
                }
            }
        }
        Flow {
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: sheet.sprayed.panels

                PlainButton {
                    required property int index
                    required property string key
                    required property string title
                    required chosen

                    objectName: "coatsPanel" + index
                    width: Math.min(form.width, Math.max(112, implicitWidth))
                    height: implicitHeight
                    text: title
                    onClicked: sheet.sprayed.flipPanel(key)
                }
            }
        }
        StepRow {
            width: parent.width
            key: "coats"
            label: qsTr("coats")
            words: String(sheet.sprayed.coats)
            onLess: sheet.sprayed.coats -= 1
            onMore: sheet.sprayed.coats += 1
        }
        StepRow {
            width: parent.width
            visible: sheet.sprayed.coats > 1
            key: "flash"
            label: qsTr("flash between coats")
            words: qsTr("%1 min").arg(sheet.sprayed.flashMin)
            onLess: sheet.sprayed.flashMin -= 1
            onMore: sheet.sprayed.flashMin += 1
        }
        FaceField {
            id: gun
            objectName: "coatsGun"
            width: parent.width
            label: qsTr("Gun, tip, pressure")
            placeholder: qsTr("gravity gun, 1.3 mm, 2 bar")
            maximumLength: 100
            onEdited: text => sheet.sprayed.gun = text
        }
        PlainButton {
            objectName: "coatsHeavy"
            width: parent.width
            height: implicitHeight
            text: qsTr("A run, or a heavy film")
            secondLine: qsTr("it rests longer before it is cut")
            chosen: sheet.sprayed.heavy
            onClicked: sheet.sprayed.heavy = !sheet.sprayed.heavy
        }
        SlabButton {
            objectName: "coatsKeep"
            width: parent.width
            height: implicitHeight
            text: qsTr("Log these coats")
            secondLine: sheet.sprayed.coatsSecond
            waits: sheet.sprayed.coatsWait
            onClicked: sheet.sprayed.keepCoats()
            onRefused: if (!sheet.sprayed.hasPerson)
                sheet.whoAsked()
        }
    }
}
