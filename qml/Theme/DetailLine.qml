// DetailLine: one label and its value, from a model with the roles label and value; long values
// (hashes, ids) wrap anywhere.
import QtQuick
import Jambline.Theme

Item {
    id: line

    required property string label
    required property string value

    height: pair.height + 9
    Accessible.role: Accessible.StaticText
    Accessible.name: qsTr("%1: %2").arg(label).arg(value)

    Column {
        id: pair
        width: parent.width
        spacing: 2

        Words {
            width: parent.width
            text: line.label
            mute: true
            size: Theme.note
            color: Theme.pencil
        }
        Words {
            width: parent.width
            text: line.value
            mute: true
            wrapMode: Text.WrapAtWordBoundaryOrAnywhere
        }
    }
    Rectangle {
        width: parent.width
        height: 1
        anchors.bottom: parent.bottom
        color: Theme.chalk
    }
}
