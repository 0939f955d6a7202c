// KindChips: the drawn kinds, always at hand; the last one used stays chosen. The row can be
// swiped, and "Other" at its end has every kind, so nothing needs a swipe. wide: all at once, in
// lines. Signals: picked(kind), others.
pragma ComponentBehavior: Bound
import QtQuick
import Jambline.Theme
import Jambline.Screens

Item {
    id: chips

    required property InspectViewModel inspect
    property bool wide: false

    readonly property int columns: Math.max(3, Math.min(6, Math.floor((width + Theme.gap) / (132 * Theme.textScale))))
    readonly property real cell: Math.floor((width - (columns - 1) * Theme.gap) / columns)
    readonly property int kind: inspect.kind
    readonly property bool listed: Array.from(inspect.kinds).includes(kind)

    signal picked(int kind)
    signal others

    implicitHeight: wide ? flow.height : Math.max(other.implicitHeight, row.tallest)
    Accessible.role: Accessible.Grouping
    Accessible.name: qsTr("What a tap marks")

    Flickable {
        id: row

        readonly property real tallest: line.implicitHeight

        visible: !chips.wide
        width: other.x - Theme.gap
        height: parent.height
        contentWidth: line.width
        flickableDirection: Flickable.HorizontalFlick
        boundsBehavior: Flickable.StopAtBounds
        clip: true

        Row {
            id: line
            spacing: Theme.gap

            Repeater {
                model: chips.wide ? [] : chips.inspect.kinds

                KindChip {
                    required property int modelData
                    height: chips.height
                    kind: modelData
                    text: chips.inspect.kindWords(modelData)
                    chosen: chips.kind === modelData
                    onClicked: chips.picked(modelData)
                }
            }
        }
    }
    KindChip {
        id: other
        objectName: "otherKind"
        visible: !chips.wide
        x: parent.width - width
        width: Math.max(80, Math.min(implicitWidth, 120))
        height: parent.height
        kind: chips.listed ? -1 : chips.kind
        text: chips.listed ? qsTr("Other") : chips.inspect.kindWords(chips.kind)
        chosen: !chips.listed
        onClicked: chips.others()
    }
    Flow {
        id: flow
        visible: chips.wide
        width: parent.width
        spacing: Theme.gap

        Repeater {
            model: chips.wide ? chips.inspect.kinds : []

            KindChip {
                required property int modelData
                kind: modelData
                text: chips.inspect.kindWords(modelData)
                chosen: chips.kind === modelData
                onClicked: chips.picked(modelData)
                width: chips.cell
                height: implicitHeight
            }
        }
        KindChip {
            objectName: "otherKindWide"
            width: chips.cell
            height: implicitHeight
            kind: chips.listed ? -1 : chips.kind
            text: chips.listed ? qsTr("Other") : chips.inspect.kindWords(chips.kind)
            chosen: !chips.listed
            onClicked: chips.others()
        }
    }
}
