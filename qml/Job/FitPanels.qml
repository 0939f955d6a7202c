// FitPanels: the panels of the car that are set at slots, in the order in which they are set, each with
// what its gaps say. fit: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: list

    required property FitViewModel fit

    spacing: Theme.gap

    PaperCard {
        width: parent.width
        visible: list.fit.panelCount === 0
        dashed: true

        Item {
            width: parent.width
            height: Math.max(empty.height, 64)

            Hatch {
                width: 56
                height: 56
                anchors.verticalCenter: parent.verticalCenter
            }
            Words {
                id: empty
                x: 70
                width: parent.width - x
                anchors.verticalCenter: parent.verticalCenter
                text: qsTr("No panel of this car hangs at slots: nothing is set here. Panels are planned when the car is opened.")
                color: Theme.pencil
            }
        }
    }
    Words {
        width: parent.width
        visible: list.fit.panelCount > 0
        text: qsTr("From what is welded outwards: each panel is set to the one before it.")
        color: Theme.pencil
    }
    Repeater {
        model: list.fit.panels

        FactRow {
            required property string key
            required shape
            required title
            required words

            objectName: "fitPanel_" + key
            width: list.width
            onClicked: list.fit.openPanel(key)
        }
    }
}
