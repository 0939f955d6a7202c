// VerdictRow: what else can be said of a panel: dirt all over, redo, back to body, ask; for a loose
// part with several racks also which one. Signals: dirtAsked, rackAsked.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Grid {
    id: row

    required property InspectViewModel inspect

    readonly property int shownCount: rack.visible ? 5 : 4
    readonly property real widest: Math.max(dirt.implicitWidth, redo.implicitWidth, body.implicitWidth, ask.implicitWidth)
    readonly property real cell: (width - (columns - 1) * columnSpacing) / columns
    readonly property real tallest: Math.max(dirt.implicitHeight, redo.implicitHeight, body.implicitHeight, ask.implicitHeight)

    signal dirtAsked
    signal rackAsked

    columns: Theme.textScale > 1.2 && width < 560 ? 2 : shownCount
    columnSpacing: Theme.gap
    rowSpacing: Theme.gap

    PlainButton {
        id: dirt
        objectName: "dirtAllOver"
        width: row.cell
        height: row.tallest
        textSize: Theme.note
        text: row.inspect.dirt === 0 ? qsTr("Dirt all over") : qsTr("Dirt %1").arg(row.inspect.dirtClassWords(row.inspect.dirt))
        chosen: row.inspect.dirt > 0
        onClicked: row.dirtAsked()
    }
    PlainButton {
        id: redo
        objectName: "redo"
        width: row.cell
        height: row.tallest
        beside: false
        textSize: Theme.note
        shape: ShapeKind.Respray
        text: qsTr("Redo")
        chosen: row.inspect.look === PanelLook.Redo
        onClicked: row.inspect.sayRedo()
    }
    PlainButton {
        id: body
        objectName: "backToBody"
        width: row.cell
        height: row.tallest
        textSize: Theme.note
        text: qsTr("Back to body")
        chosen: row.inspect.look === PanelLook.BackToBody
        onClicked: row.inspect.sayBackToBody()
    }
    PlainButton {
        id: ask
        objectName: "ask"
        width: row.cell
        height: row.tallest
        beside: false
        textSize: Theme.note
        iconName: "hand"
        text: qsTr("Ask")
        chosen: row.inspect.look === PanelLook.Ask
        onClicked: row.inspect.sayAsk()
    }
    PlainButton {
        id: rack
        objectName: "whichRack"
        visible: row.inspect.loose && row.inspect.rackCount > 1
        pressable: visible
        width: row.cell
        height: row.tallest
        textSize: Theme.note
        text: row.inspect.rackWords
        name: qsTr("Hangs on %1. Another rack.").arg(row.inspect.rackWords)
        onClicked: row.rackAsked()
    }
}
