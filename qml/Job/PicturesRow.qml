// PicturesRow: the way from the car to its pictures: taken and missing in one line. Signal: clicked.
import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    property ShotsViewModel shots: null

    objectName: "picturesRow"
    visible: shots !== null
    pressable: visible
    name: qsTr("Pictures, %1").arg(shots?.rowWords ?? "")

    Item {
        width: parent.width
        height: Math.max(shape.height, words.height)

        StateShape {
            id: shape
            anchors.verticalCenter: parent.verticalCenter
            kind: card.shots?.rowShape ?? ShapeKind.None
            size: 26
        }
        Column {
            id: words
            x: shape.width + 12
            width: parent.width - x - on.width - 8
            anchors.verticalCenter: parent.verticalCenter
            spacing: 2

            Words {
                width: parent.width
                text: qsTr("Pictures")
                mute: true
                bold: true
            }
            Words {
                objectName: "picturesRowWords"
                width: parent.width
                text: card.shots?.rowWords ?? ""
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
        }
        Icon {
            id: on
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            source: "forward"
        }
    }
}
