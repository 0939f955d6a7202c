// PictureTrouble: why a picture is not shown, on its hatch. text; most: its widest.
import QtQuick
import Jambline.Theme

Rectangle {
    id: plate

    property alias text: words.text
    property real most: 200

    visible: words.text !== ""
    width: Math.min(most, words.natural + 16)
    height: words.height + 12
    radius: Theme.corner
    color: Theme.sheet
    border.width: 1
    border.color: Theme.edge

    Words {
        id: words
        anchors.centerIn: parent
        width: parent.width - 12
        horizontalAlignment: Text.AlignHCenter
        bold: true
        size: Theme.note
    }
}
