// NumberFields: some numbers that are typed one after the other: what each is and what was typed; a
// press chooses which one comes next. rows: a model with key, title, words and chosen.
// Signal: chose(field).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme

Row {
    id: part

    property var rows: null

    signal chose(int field)

    spacing: Theme.gap

    Repeater {
        id: list
        model: part.rows

        PlainButton {
            required property int key
            required property string title
            required property string words
            required chosen

            objectName: "number" + key
            width: (part.width - (list.count - 1) * part.spacing) / Math.max(1, list.count)
            height: implicitHeight
            beside: false
            text: words === "" ? "\u2013" : words
            secondLine: title
            name: words === "" ? qsTr("%1, not typed yet").arg(title) : qsTr("%1 %2").arg(title).arg(words)
            onClicked: part.chose(key)
        }
    }
}
