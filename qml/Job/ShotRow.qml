// ShotRow: one wanted picture in a list: where to stand, what it shows, how it stands. Set from a row
// of ShotsViewModel; store: for its picture. Signals: clicked; again: take one more.
import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: row

    required property string title
    required property string stand
    required property int view
    required property int shape
    required property string words
    required property string file
    required property string picture
    property PictureStore store: null

    objectName: "shotRow"
    pressable: true
    name: qsTr("%1, %2. %3").arg(title).arg(words).arg(stand)
    padding: 8

    signal again

    Item {
        width: parent.width
        height: Math.max(drawing.height, said.height, more.visible ? more.height : 0)

        ShotDrawing {
            id: drawing
            width: 64
            height: 64
            visible: row.file === ""
            view: row.view
        }
        PictureFrame {
            width: 64
            height: 64
            visible: row.file !== ""
            store: visible ? row.store : null
            file: row.file
        }
        Column {
            id: said
            anchors.verticalCenter: parent.verticalCenter
            x: drawing.width + 12
            width: parent.width - x - (more.visible ? more.width + 4 : 4)
            spacing: 3

            Words {
                width: parent.width
                text: row.title
                mute: true
                bold: true
            }
            Words {
                width: parent.width
                text: row.stand
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
            Row {
                width: parent.width
                spacing: 8

                StateShape {
                    id: mark
                    kind: row.shape
                    size: 18
                }
                Words {
                    width: parent.width - mark.width - 8
                    text: row.words
                    mute: true
                    size: Theme.note
                }
            }
        }
        PlainButton {
            id: more
            objectName: "shotAgain"
            anchors.right: parent.right
            visible: row.picture !== ""
            pressable: visible
            bare: true
            width: Theme.touch
            height: Theme.touch
            iconName: "camera"
            name: qsTr("Take one more: %1").arg(row.title)
            onClicked: row.again()
        }
    }
}
