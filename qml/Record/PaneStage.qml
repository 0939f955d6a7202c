// PaneStage: a stage of the chosen car with its hours, and whether it is done. The delegate of
// RecordPane: its fields come from the model's roles.
import QtQuick
import Jambline.Theme

Item {
    id: row

    required property string title
    required property string hours
    required property bool done

    height: Math.max(shape.height, words.height, spent.height) + 4
    Accessible.role: Accessible.StaticText
    Accessible.name: done ? qsTr("%1, done, %2").arg(title).arg(hours) : qsTr("%1, not done, %2").arg(title).arg(hours)

    StateShape {
        id: shape
        kind: row.done ? ShapeKind.Done : ShapeKind.NotYet
        size: 20
    }
    Words {
        id: words
        x: shape.width + 10
        width: parent.width - x - spent.width - 12
        text: row.title
        mute: true
    }
    Words {
        id: spent
        anchors.right: parent.right
        width: Math.min(natural, row.width / 2)
        horizontalAlignment: Text.AlignRight
        text: row.hours
        mute: true
        color: Theme.pencil
    }
}
