// CarVisit: the ways to all that belongs to a car's visit besides its paint, under its stages; each
// row only where it is of interest.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: page

    required property CarViewModel car
    property VisitRowsViewModel rows: null  // check-in, walk-around, note, comebacks

    spacing: Theme.gap

    Repeater {
        model: page.rows?.rows ?? null

        FactRow {
            required property int key
            required title
            required words
            required shape

            objectName: "visitRow" + key
            width: page.width
            pressable: true
            onClicked: page.rows.ask(key)
        }
    }
}
