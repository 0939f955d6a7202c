// ActRow: up to three PlainButtons side by side in equal parts, on a tablet with the SlabButton at
// the right end. Put them inside. Where their words no longer fit, they stand below one another.
import QtQuick
import Jambline.Theme
import QtQuick.Layouts

Item {
    id: row

    default property alias acts: grid.data
    readonly property bool folded: grid.columns === 1 && grid.shownCount > 1

    implicitWidth: 380
    implicitHeight: grid.implicitHeight

    GridLayout {
        id: grid

        readonly property int shownCount: Array.from(children).filter(child => child.visible).length
        readonly property real widest: Array.from(children).reduce((most, child) =>
            child.visible ? Math.max(most, child.implicitWidth) : most, 0)

        width: parent.width
        height: parent.height
        columnSpacing: Theme.gap
        rowSpacing: Theme.gap
        columns: shownCount * widest + (shownCount - 1) * columnSpacing <= row.width ? Math.max(1, shownCount) : 1
    }
}
