// ReleaseSheet: the pictures that a stage wants and has not: take them, or say why it goes on without.
// car must be set. Signal: takeAsked, the sheet closes by itself.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property CarViewModel car

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
                required property string stand

                width: parent?.width ?? 0
                spacing: 10

                StateShape {
                    id: open
                    kind: ShapeKind.Unseen
                    ground: Theme.paper
                }
                Column {
                    width: line.width - open.width - 10

                    Words {
                        width: parent.width
                        text: line.title
                    }
                    Words {
                        width: parent.width
                        text: line.stand
                        size: Theme.note
                        color: Theme.pencil
                    }
                }
            }
        }
        Words {
            width: parent.width
            topPadding: 8
            text: qsTr("Release without them:")
            bold: true
            color: Theme.pencil
        }
        Flow {
            id: reasons
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: sheet.car.withoutReasons

                PlainButton {
                    required property int index
                    required property string modelData

                    objectName: "without" + index
                    width: Math.min(reasons.width, Math.max(implicitWidth, (reasons.width - Theme.gap) / 2))
                    height: implicitHeight
                    text: modelData
                    onClicked: sheet.car.finishWithout(index)
                }
            }
        }
    }
}
