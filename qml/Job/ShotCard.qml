// ShotCard: one wanted picture on a wide wall: the newest one that was taken, else where to stand.
// Set from a row of ShotsViewModel; store: for pictures. Signals: clicked; again: take one more.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Pressable {
    id: card

    property PictureStore store: null
    required property string title
    required property string stand
    required property string file
    required property string picture
    required property int view
    required property int shape
    required property string words

    objectName: "shotCard"
    name: qsTr("%1, %2. %3").arg(title).arg(words).arg(stand)
    implicitHeight: said.y + said.height + 4

    signal again

    PictureFrame {
        id: picture
        visible: card.file !== ""
        width: parent.width
        height: Math.round(width * 0.75)
        store: visible ? card.store : null
        file: card.file
    }
    Item {
        visible: card.file === ""
        width: parent.width
        height: picture.height

        Hatch {
            anchors.fill: parent
            radius: Theme.corner
            color: Theme.chalk
        }
        ShotDrawing {
            anchors.centerIn: parent
            width: Math.min(parent.width, parent.height) - 16
            height: width
            view: card.view
        }
    }
    Rectangle {
        anchors.fill: picture
        radius: Theme.corner
        color: "transparent"
        border.width: Theme.line
        border.color: Theme.edge
    }
    Rectangle {
        visible: more.visible
        anchors { right: picture.right; top: picture.top; margins: 4 }
        width: more.width
        height: more.height
        radius: Theme.corner
        color: Theme.sheet

        PlainButton {
            id: more
            objectName: "shotAgain"
            visible: card.picture !== ""
            pressable: visible
            bare: true
            width: Theme.touch
            height: Theme.touch
            iconName: "camera"
            name: qsTr("Take one more: %1").arg(card.title)
            onClicked: card.again()
        }
    }
    Column {
        id: said
        y: picture.height + 4
        width: parent.width
        spacing: 1

        Words {
            width: parent.width
            text: card.title
            mute: true
            bold: true
            size: Theme.note
        }
        Row {
            width: parent.width
            spacing: 6

            StateShape {
                id: mark
                kind: card.shape
                size: 16
                ground: Theme.paper
            }
            Words {
                width: parent.width - mark.width - 6
                text: card.words
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
        }
    }
}
