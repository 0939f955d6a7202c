// MarkRow: what the chosen mark is, and what can be changed at once: kind (opens the sheet), size
// (one step), withdraw; on the first marks of a car also what the particle looks like, where one tap
// repeats the last answer. Signals: kindAsked, lookAsked, sizeAsked(size), withdrawn.
import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: row

    required property InspectViewModel inspect

    readonly property real actsWidth: kind.implicitWidth + size.implicitWidth + gone.implicitWidth
        + (looks.visible ? looks.implicitWidth : 0)
    readonly property real share: width / (looks.visible ? 4 : 3)
    readonly property bool folded: said.natural + 52 + actsWidth > width

    signal kindAsked
    signal lookAsked
    signal sizeAsked(int size)
    signal withdrawn

    padding: 0
    name: qsTr("%1, %2").arg(inspect.chosenTitle).arg(inspect.chosenNote)
    implicitWidth: 380

    Flow {
        width: parent.width

        Item {
            width: row.folded ? row.width : row.width - acts.width
            height: Math.max(row.folded ? 0 : acts.height, words.height + 16)

            StateShape {
                x: 10
                anchors.verticalCenter: parent.verticalCenter
                kind: ShapeKind.Ring
                key: row.inspect.chosenMark
            }
            Column {
                id: words
                x: 42
                width: parent.width - x - 4
                anchors.verticalCenter: parent.verticalCenter

                Words {
                    id: said
                    width: parent.width
                    text: row.inspect.chosenTitle
                    mute: true
                    bold: true
                }
                Words {
                    width: parent.width
                    visible: row.inspect.chosenLayer > 0
                    text: row.inspect.chosenNote
                    mute: true
                    size: Theme.small
                    color: Theme.pencil
                }
            }
        }
        Row {
            id: acts
            height: Math.max(Theme.touch, kind.implicitHeight, size.implicitHeight, looks.implicitHeight, gone.implicitHeight)

            PlainButton {
                id: kind
                objectName: "markKind"
                bare: true
                width: row.folded ? row.share : implicitWidth
                height: parent.height
                text: qsTr("Kind")
                name: qsTr("Kind of %1").arg(row.inspect.chosenTitle)
                onClicked: row.kindAsked()
            }
            PlainButton {
                id: size
                objectName: "markSize"
                bare: true
                width: row.folded ? row.share : implicitWidth
                height: parent.height
                text: qsTr("Size %1").arg(row.inspect.chosenSize)
                name: qsTr("Size %1 of %2. Makes it %3.").arg(row.inspect.chosenSize).arg(row.inspect.chosenTitle).arg(next)
                onClicked: row.sizeAsked(next)

                readonly property int next: row.inspect.chosenSize % 4 + 1
            }
            PlainButton {
                id: looks
                objectName: "markLooks"
                visible: row.inspect.lookAsked
                pressable: visible
                bare: true
                width: row.folded ? row.share : implicitWidth
                height: parent.height
                text: row.inspect.lookAgain !== "" ? row.inspect.lookAgain : qsTr("Looks like")
                name: row.inspect.lookAgain !== "" ? qsTr("%1 looks like %2 again").arg(row.inspect.chosenTitle).arg(row.inspect.lookAgain)
                    : qsTr("What %1 looks like. Opens the choice.").arg(row.inspect.chosenTitle)
                onClicked: row.inspect.lookAgain !== "" ? row.inspect.sayLookAgain() : row.lookAsked()
            }
            PlainButton {
                id: gone
                objectName: "markWithdraw"
                bare: true
                width: row.folded ? row.share : implicitWidth
                height: parent.height
                text: qsTr("Withdraw")
                name: qsTr("Withdraw %1").arg(row.inspect.chosenTitle)
                onClicked: row.withdrawn()
            }
        }
    }
}
