// WaitingCard: a device that asks to be let in: its name, the six digits that have to be the same on
// its screen, and the two ways. devices: the view model; device: its id; called: its name.
import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    required property DevicesViewModel devices
    required property string device
    required property string called
    required property string digits
    required property string digitsSpoken
    required property string asked

    name: qsTr("%1 asks to be let in, digits %2").arg(called).arg(digitsSpoken)

    Column {
        width: parent.width
        spacing: Theme.gap

        Item {
            width: parent.width
            height: Math.max(mark.height, title.height)

            StateShape {
                id: mark
                anchors.verticalCenter: parent.verticalCenter
                kind: ShapeKind.Waits
                size: 26
            }
            Words {
                id: title
                x: 38
                width: parent.width - x
                anchors.verticalCenter: parent.verticalCenter
                text: qsTr("%1, %2").arg(card.called).arg(card.asked)
                mute: true
                bold: true
            }
        }
        FarDigits {
            objectName: "waitingDigits"
            width: parent.width
            most: 64
            text: card.digits
            spoken: card.digitsSpoken
            mute: true
        }
        Words {
            width: parent.width
            text: qsTr("Let it in only when its screen shows the same six digits.")
            mute: true
            size: Theme.note
            color: Theme.pencil
        }
        ActRow {
            width: parent.width

            PlainButton {
                objectName: "admit"
                text: qsTr("Let in")
                secondLine: qsTr("to work with")
                name: qsTr("Let %1 in to work with").arg(card.called)
                onClicked: card.devices.admit(card.device, false)
            }
            PlainButton {
                objectName: "admitManager"
                text: qsTr("Let in")
                secondLine: qsTr("as a manager's")
                name: qsTr("Let %1 in as a manager's device").arg(card.called)
                onClicked: card.devices.admit(card.device, true)
            }
            PlainButton {
                objectName: "turnAway"
                text: qsTr("Turn away")
                secondLine: qsTr("other digits")
                name: qsTr("Turn %1 away").arg(card.called)
                onClicked: card.devices.turnAway(card.device)
            }
        }
    }
}
