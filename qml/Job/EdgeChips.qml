// EdgeChips: what is found on an edge or a jamb, on the picture that was just taken. shot must be set.
pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Jambline.Theme
import Jambline.Screens

Column {
    id: chips

    required property ShotViewModel shot

    spacing: Theme.gap

    Words {
        width: parent.width
        text: chips.shot.several ? qsTr("Tap all that are there:") : qsTr("Is there any of this on the edge?")
        bold: true
    }
    GridLayout {
        id: grid
        width: parent.width
        columns: width < 300 * Theme.textScale ? 1 : 2
        columnSpacing: Theme.gap
        rowSpacing: Theme.gap

        Repeater {
            model: chips.shot.edgeKinds

            PlainButton {
                required property int key
                required property string title
                required property bool picked

                objectName: "edgeFind" + key
                Layout.preferredWidth: (grid.width - (grid.columns - 1) * grid.columnSpacing) / grid.columns
                text: title
                chosen: picked
                onClicked: chips.shot.find(key)
            }
        }
    }
    PlainButton {
        objectName: "edgesSeveral"
        width: parent.width
        height: implicitHeight
        text: chips.shot.several ? qsTr("Only one of them") : qsTr("More than one of them")
        onClicked: chips.shot.several = !chips.shot.several
    }
}
