// CauseChips: every cause as a drawn chip, those that something points to first, and at the end to
// leave it open. A tap picks one; the main act says it.
pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Jambline.Theme
import Jambline.Screens

Column {
    id: chips

    required property EvidenceViewModel evidence

    spacing: Theme.gap

    Words {
        width: parent.width
        topPadding: 8
        text: qsTr("What do you say threw it?")
        bold: true
        Accessible.role: Accessible.Heading
    }
    GridLayout {
        id: grid
        width: parent.width
        columns: Math.max(1, Math.min(4, Math.floor((width + Theme.gap) / (112 * Theme.textScale + Theme.gap))))
        columnSpacing: Theme.gap
        rowSpacing: Theme.gap

        readonly property real cell: (width - (columns - 1) * columnSpacing) / columns

        Repeater {
            model: chips.evidence.causes

            PlainButton {
                required property int index
                required property string key
                required property string title
                required property string icon
                required property bool pointed
                required chosen

                objectName: "cause" + index
                Layout.fillWidth: false
                Layout.preferredWidth: grid.cell
                beside: false
                text: title
                iconName: icon
                secondLine: pointed ? qsTr("pointed to") : ""
                onClicked: chips.evidence.pick(key)
            }
        }
        PlainButton {
            objectName: "causeOpen"
            Layout.fillWidth: false
            Layout.preferredWidth: grid.cell
            beside: false
            text: qsTr("Leave it open")
            iconName: "eye"
            chosen: chips.evidence.noneChosen
            onClicked: chips.evidence.pick("")
        }
    }
}
