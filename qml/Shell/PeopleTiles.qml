// PeopleTiles: the people of this device, two beside each other; a tap chooses who it is.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Flow {
    id: tiles

    required property ClockViewModel clock
    readonly property int columns: width < 340 * Theme.textScale ? 1 : 2

    spacing: Theme.gap

    Repeater {
        model: tiles.visible ? tiles.clock.people : null

        PersonTile {
            width: (tiles.width - (tiles.columns - 1) * Theme.gap) / tiles.columns
            height: Math.max(92, implicitHeight)
            onClicked: tiles.clock.choose(personId)
        }
    }
}
