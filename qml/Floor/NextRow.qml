// NextRow: at a desk, above the table: what the person does next, why, and the act that begins it.
// floor: the view model. Signal: begun.
import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: row

    required property FloorViewModel floor

    signal begun

    objectName: "nextRow"
    padding: 10

    Item {
        width: parent.width
        height: Math.max(said.height, begin.height)

        Column {
            id: said
            width: parent.width - begin.width - 16
            anchors.verticalCenter: parent.verticalCenter
            spacing: 2

            Words {
                width: parent.width
                text: qsTr("Next for you: %1").arg(row.floor.nextCar)
                bold: true
            }
            Words {
                width: parent.width
                text: row.floor.nextWhy
                size: Theme.note
                color: Theme.pencil
            }
        }
        PlainButton {
            id: begin
            objectName: "floorBegin"
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            width: Math.min(implicitWidth + 24, parent.width / 2)
            height: implicitHeight
            pressable: row.visible
            text: row.floor.nextText
            name: qsTr("%1, %2, %3").arg(row.floor.nextText).arg(row.floor.nextCar).arg(row.floor.nextWhy)
            onClicked: row.begun()
        }
    }
}
