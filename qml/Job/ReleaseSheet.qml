// ReleaseSheet: the pictures that a stage wants and has not: take them, or say why it goes on without.
// car must be set; canTake: they can be taken from here. Signal: takeAsked(stage). It closes by itself.
pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property CarViewModel car
    property bool canTake: false

    signal takeAsked(string stage)

    title: car.missingWords

    Connections {
        target: sheet.car
        function onStageFinished() { sheet.close(); }
    }

    Column {
        width: parent.width
        spacing: Theme.gap

        Repeater {
            model: sheet.visible ? sheet.car.missing : null

            Row {
                id: line

                required property string title

                width: parent?.width ?? 0
                spacing: 10

                StateShape {
                    id: open
                    kind: ShapeKind.Unseen
                    ground: Theme.paper
                }
                Words {
                    width: line.width - open.width - 10
                    text: line.title
                }
            }
        }
        Words {
            width: parent.width
            visible: text !== ""
            text: sheet.car.missingMore
            color: Theme.pencil
        }
        SlabButton {
            objectName: "releaseTake"
            width: parent.width
            height: visible ? implicitHeight : 0
            visible: sheet.canTake
            pressable: visible
            text: qsTr("Take the next")
            secondLine: sheet.car.nextShotWords
            onClicked: {
                const stage = sheet.car.stageKey;
                sheet.close();
                sheet.takeAsked(stage);
            }
        }
        Words {
            width: parent.width
            topPadding: 8
            text: qsTr("Release without them:")
            bold: true
            color: Theme.pencil
        }
        GridLayout {
            id: reasons
            width: parent.width
            columns: width < 300 * Theme.textScale ? 1 : 2
            columnSpacing: Theme.gap
            rowSpacing: Theme.gap

            Repeater {
                model: sheet.car.withoutReasons

                PlainButton {
                    required property int index
                    required property string modelData

                    objectName: "without" + index
                    Layout.preferredWidth: Math.floor((reasons.width - (reasons.columns - 1) * reasons.columnSpacing) / reasons.columns)
                    text: modelData
                    onClicked: sheet.car.finishWithout(index)
                }
            }
        }
    }
}
