// ListSlots: room at the head and the foot of a list for what its page puts there. head, foot: heights.
// Qt 6.4 makes no component of a view in a file with bound components, so they stand here.
// qmllint disable unqualified
import QtQuick

QtObject {
    id: slots

    property real head: 0
    property real foot: 0
    property Component header: Component {
        Item {
            width: 1
            height: slots.head
        }
    }
    property Component footer: Component {
        Item {
            width: 1
            height: slots.foot
        }
    }
}
