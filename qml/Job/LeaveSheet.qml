// LeaveSheet: what is still open on a car that is about to leave, and to deliver it all the same.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: leaving

    required property CarViewModel car

    title: qsTr("Open points")

    Column {
        width: parent.width
        spacing: Theme.gap

        Repeater {
            model: leaving.car.openPoints

            Row {
                id: point

                required property string modelData

                width: parent.width
                spacing: 10

                StateShape {
                    id: open
                    kind: ShapeKind.NotYet
                    ground: Theme.paper
                }
                Words {
                    width: point.width - open.width - 10
                    text: point.modelData
                }
            }
        }
        SlabButton {
            objectName: "deliverOpen"
            width: parent.width
            text: leaving.car.openPoints.length === 1 ? qsTr("Deliver with 1 open point")
                : qsTr("Deliver with %1 open points").arg(leaving.car.openPoints.length)
            onClicked: {
                leaving.car.deliver();
                leaving.close();
            }
        }
    }
}
