// WasteCard: the end of spraying: wipes, filters, leftovers, gun, static. One tap puts it away.
// Signal: seen.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    signal seen

    name: cautions.wasteTitle

    Cautions {
        id: cautions
    }
    Column {
        id: lines
        width: parent.width
        spacing: 8

        Words {
            width: parent.width
            text: cautions.wasteTitle
            bold: true
            size: Theme.lead
        }
        Repeater {
            model: cautions.waste

            Row {
                id: line

                required property string modelData

                width: lines.width
                spacing: 10

                StateShape {
                    id: mark
                    kind: ShapeKind.NotYet
                    size: 20
                }
                Words {
                    width: parent.width - mark.width - 10
                    text: line.modelData
                }
            }
        }
        Words {
            width: parent.width
            text: cautions.wasteSource
            size: Theme.note
            color: Theme.pencil
        }
        PlainButton {
            objectName: "wasteSeen"
            width: parent.width
            height: implicitHeight
            text: qsTr("Seen to")
            onClicked: card.seen()
        }
    }
}
