// ConflictChip: a label that two people wrote without knowing of each other: both values with who and
// when, the first one is shown; one press on either settles it. title ("Promised"), sides, spoken.
// Signal: taken(side).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme

PaperCard {
    id: chip

    required property string title
    required property var sides
    required property string spoken

    signal taken(int side)

    disputed: true
    padding: 8
    name: spoken

    Column {
        width: parent.width
        spacing: Theme.gap

        Row {
            width: parent.width
            spacing: 10

            StateShape {
                id: mark
                kind: ShapeKind.Disputed
                anchors.verticalCenter: parent.verticalCenter
            }
            Words {
                width: parent.width - mark.width - 10
                text: qsTr("%1: disputed. Take the one that holds:").arg(chip.title)
                mute: true
                bold: true
            }
        }
        Repeater {
            model: chip.sides

            PlainButton {
                required property int index
                required property string modelData

                objectName: "side" + index
                width: chip.width - 2 * chip.padding
                height: implicitHeight
                text: modelData
                secondLine: index === 0 ? qsTr("is shown now") : ""
                name: qsTr("Take: %1, %2").arg(chip.title).arg(modelData)
                onClicked: chip.taken(index)
            }
        }
    }
}
