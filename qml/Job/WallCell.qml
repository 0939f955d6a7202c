// WallCell: one picture on the wall: what it shows, who took it and when, a word when it is poor, a
// pencil when it is drawn on. shown: a cell of WallViewModel. Signal: clicked.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Pressable {
    id: cell

    property PictureStore store: null
    property var shown: ({})

    objectName: "wallCell"
    name: shown.spoken ?? ""
    implicitHeight: words.y + words.height + 4

    PictureFrame {
        id: picture
        width: parent.width
        height: Math.round(width * 0.8)
        store: cell.store
        file: cell.shown.file ?? ""
    }
    Rectangle {
        anchors.fill: picture
        color: "transparent"
        border.width: Theme.line
        border.color: Theme.edge
    }
    Rectangle {
        visible: (cell.shown.notes ?? 0) > 0
        anchors { right: picture.right; top: picture.top; margins: 4 }
        width: 28
        height: 28
        radius: Theme.corner
        color: Theme.sheet

        Icon {
            anchors.centerIn: parent
            size: 20
            source: "pencil"
        }
    }
    Column {
        id: words
        y: picture.height + 4
        width: parent.width
        spacing: 1

        Words {
            width: parent.width
            text: cell.shown.title ?? ""
            mute: true
            bold: true
            size: Theme.note
        }
        Words {
            width: parent.width
            text: cell.shown.line ?? ""
            mute: true
            size: Theme.note
            color: Theme.pencil
        }
        Row {
            visible: (cell.shown.poor ?? "") !== ""
            width: parent.width
            spacing: 6

            StateShape {
                id: shape
                kind: ShapeKind.Waits
                size: 16
                ground: Theme.paper
            }
            Words {
                width: parent.width - shape.width - 6
                text: cell.shown.poor ?? ""
                mute: true
                bold: true
                size: Theme.note
                color: Theme.ochreInk
            }
        }
    }
}
