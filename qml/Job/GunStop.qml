// GunStop: a stop is not met: "Do not spray" large, what to put right, and the report that it was
// sprayed although. check: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    required property BeforeGunViewModel check

    objectName: "gunStop"
    visible: check.stopped
    must: true
    name: qsTr("Do not spray")

    Column {
        width: parent.width
        spacing: 12

        Row {
            width: parent.width
            spacing: 12

            StateShape {
                id: mark
                anchors.verticalCenter: parent.verticalCenter
                kind: ShapeKind.Must
                size: 40
            }
            Words {
                width: parent.width - mark.width - 12
                text: qsTr("Do not spray")
                mute: true
                bold: true
                size: Theme.place
                color: Theme.oxide
            }
        }
        Repeater {
            model: card.check.stops

            Column {
                id: stop

                required property string title
                required property string words

                width: parent.width
                spacing: 2

                Words {
                    width: parent.width
                    text: stop.title
                    bold: true
                }
                Words {
                    width: parent.width
                    text: stop.words
                }
            }
        }
        PlainButton {
            objectName: "gunReport"
            width: parent.width
            height: implicitHeight
            holdable: true
            text: qsTr("Report: it was sprayed without")
            secondLine: qsTr("hold; only after it was done")
            textSize: Theme.note
            onHeld: card.check.report()
        }
    }
}
