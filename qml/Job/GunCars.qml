// GunCars: no car is on the tape: those that wait to be sprayed. check: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    required property BeforeGunViewModel check

    visible: !check.here
    dashed: true

    Column {
        width: parent.width
        spacing: Theme.gap

        Item {
            width: parent.width
            height: Math.max(empty.height, 64)

            Hatch {
                width: 56
                height: 56
                anchors.verticalCenter: parent.verticalCenter
            }
            Words {
                id: empty
                x: 70
                width: parent.width - x
                anchors.verticalCenter: parent.verticalCenter
                text: card.check.emptyWords
                color: Theme.pencil
            }
        }
        Repeater {
            model: card.check.here ? null : card.check.cars

            PlainButton {
                required property int index
                required property string key
                required property string title
                required property string words

                objectName: "gunCar" + index
                width: parent.width
                height: implicitHeight
                text: title
                secondLine: words
                onClicked: card.check.chooseCar(key)
            }
        }
    }
}
