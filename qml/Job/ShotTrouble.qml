// ShotTrouble: why the camera gives no picture here, what is kept, and the other ways to take one.
// shot must be set. Signal: folderAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    required property ShotViewModel shot

    objectName: "shotTrouble"
    dashed: true
    name: qsTr("%1 %2").arg(shot.troubleWhat).arg(shot.troubleKept)

    signal folderAsked

    Column {
        width: parent.width
        spacing: 10

        ShotDrawing {
            anchors.horizontalCenter: parent.horizontalCenter
            width: 96
            height: 96
            visible: card.shot.view >= 0
            view: card.shot.view
        }
        Row {
            width: parent.width
            spacing: 12

            StateShape {
                id: mark
                kind: ShapeKind.Waits
                size: 26
            }
            Column {
                width: parent.width - mark.width - 12
                spacing: 2

                Words {
                    objectName: "shotTroubleWhat"
                    width: parent.width
                    text: card.shot.troubleWhat
                    mute: true
                    bold: true
                    size: Theme.lead
                }
                Words {
                    width: parent.width
                    text: card.shot.troubleKept
                    mute: true
                    color: Theme.pencil
                }
                Words {
                    width: parent.width
                    visible: Theme.desk
                    text: qsTr("Picture files can be dropped here.")
                    mute: true
                    color: Theme.pencil
                }
            }
        }
        PlainButton {
            objectName: "shotRestart"
            visible: card.shot.canRestart
            pressable: visible
            width: parent.width
            height: visible ? implicitHeight : 0
            text: qsTr("Start the camera again")
            onClicked: card.shot.restart()
        }
        PlainButton {
            objectName: "shotWatch"
            visible: !card.shot.watching
            pressable: visible
            width: parent.width
            height: visible ? implicitHeight : 0
            text: qsTr("Watch a folder")
            secondLine: qsTr("a camera's card: what it takes is offered here")
            onClicked: card.folderAsked()
        }
    }
}
