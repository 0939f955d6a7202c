// StartedEarlier: the next start was earlier: some minutes ago, or at a typed time of today. clock must
// be set.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: earlier

    required property ClockViewModel clock
    property bool open: false
    property bool typing: false

    spacing: Theme.gap

    PlainButton {
        objectName: "startedEarlier"
        width: parent.width
        height: implicitHeight
        visible: !earlier.open
        pressable: visible
        text: qsTr("Started earlier")
        secondLine: qsTr("say when, then on what")
        onClicked: earlier.open = true
    }
    Words {
        objectName: "startTime"
        width: parent.width
        visible: earlier.open
        text: earlier.clock.startTime === "" ? qsTr("Starts now") : qsTr("Started at %1. Tap what on.").arg(earlier.clock.startTime)
        bold: true
    }
    Flow {
        id: chips
        width: parent.width
        visible: earlier.open
        spacing: Theme.gap

        Repeater {
            model: [0, 5, 10, 20, 30]

            PlainButton {
                required property int modelData

                objectName: "startedAgo" + modelData
                width: Math.max(Theme.touch, (chips.width - 2 * Theme.gap) / 3)
                height: implicitHeight
                text: modelData === 0 ? qsTr("Now") : qsTr("%1 min ago").arg(modelData)
                chosen: earlier.clock.earlierMin === modelData
                onClicked: {
                    earlier.typing = false;
                    earlier.clock.sayEarlier(modelData);
                }
            }
        }
        PlainButton {
            objectName: "startedAt"
            width: Math.max(Theme.touch, (chips.width - 2 * Theme.gap) / 3)
            height: implicitHeight
            text: qsTr("At a time")
            chosen: earlier.clock.earlierMin < 0
            onClicked: earlier.typing = !earlier.typing
        }
    }
    KeyPad {
        objectName: "startedPad"
        width: parent.width
        visible: earlier.open && earlier.typing
        kind: KeyPad.Clock
        digits: 4
        label: qsTr("Started at, today")
        wrong: earlier.clock.earlierWrong
        onComplete: earlier.clock.sayStarted(typed)
    }
}
