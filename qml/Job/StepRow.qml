// StepRow: a small number with a key on each side. words: the number as it is read; name: what it
// is. Signals: less, more.
import QtQuick
import Jambline.Theme

Row {
    id: row

    property string words: ""
    property string label: ""
    property string key: ""

    signal less
    signal more

    spacing: Theme.gap

    PlainButton {
        id: down
        objectName: row.key + "Less"
        width: Math.max(Theme.touch, 72)
        height: implicitHeight
        text: "\u2212"
        textSize: Theme.title
        name: qsTr("%1 less").arg(row.label)
        onClicked: row.less()
    }
    Column {
        width: row.width - 2 * (down.width + row.spacing)
        anchors.verticalCenter: parent.verticalCenter

        Words {
            width: parent.width
            horizontalAlignment: Text.AlignHCenter
            text: row.words
            bold: true
            size: Theme.title
        }
        Words {
            width: parent.width
            horizontalAlignment: Text.AlignHCenter
            text: row.label
            size: Theme.note
            color: Theme.pencil
        }
    }
    PlainButton {
        objectName: row.key + "More"
        width: down.width
        height: implicitHeight
        text: "+"
        textSize: Theme.title
        name: qsTr("%1 more").arg(row.label)
        onClicked: row.more()
    }
}
