// OperationRow: one planned operation with its hours, a tenth less or more, or out.
// Signals: less, more, dropped.
import QtQuick
import Jambline.Theme

Item {
    id: row

    required property string title
    required property string hours
    readonly property bool folded: width < 380 * Theme.textScale

    signal less
    signal more
    signal dropped

    implicitHeight: folded ? words.height + keys.height + 4 : Math.max(words.height, keys.height)
    height: implicitHeight

    Words {
        id: words
        y: row.folded ? 0 : (row.height - height) / 2
        width: row.folded ? row.width : row.width - keys.width - 8
        text: qsTr("%1 · %2").arg(row.title).arg(row.hours)
        size: Theme.lead
    }
    Row {
        id: keys
        x: row.width - width
        y: row.folded ? words.height + 4 : 0
        spacing: 4

        PlainButton {
            width: Theme.touch
            iconName: "minus"
            name: qsTr("%1, %2. A tenth of an hour less.").arg(row.title).arg(row.hours)
            onClicked: row.less()
        }
        PlainButton {
            width: Theme.touch
            iconName: "plus"
            name: qsTr("%1, %2. A tenth of an hour more.").arg(row.title).arg(row.hours)
            onClicked: row.more()
        }
        PlainButton {
            width: Theme.touch
            iconName: "close"
            name: qsTr("Leave out: %1").arg(row.title)
            onClicked: row.dropped()
        }
    }
}
