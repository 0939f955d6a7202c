// PanelRow: a panel in the list of a car: shape, name, how it stands. Signal: clicked.
import QtQuick
import Jambline.Theme

PaperCard {
    id: row

    required property int index
    required property string panel
    required property string title
    required property string aside
    required property string spoken
    required property int look
    required property int marks
    required property bool noCut

    pressable: true
    name: spoken
    implicitHeight: Math.max(Theme.row, words.height + 20)

    Item {
        width: parent.width
        height: Math.max(24, words.height)

        LookShape {
            id: shape
            x: 12 - width / 2
            anchors.verticalCenter: parent.verticalCenter
            look: row.look
            size: 22
            key: row.panel
        }
        Flow {
            id: words
            x: 38
            width: parent.width - x
            anchors.verticalCenter: parent.verticalCenter

            Words {
                id: name

                readonly property bool folded: natural + aside.natural + 12 > words.width

                width: folded ? words.width : words.width - aside.width
                text: row.title
                mute: true
            }
            Row {
                visible: row.noCut
                width: parent.width
                spacing: 6

                StateShape {
                    kind: ShapeKind.Must
                    size: 18
                    anchors.verticalCenter: parent.verticalCenter
                }
                Words {
                    width: Math.min(natural, parent.width - 24)
                    text: qsTr("do not cut")
                    mute: true
                    bold: true
                    size: Theme.note
                    color: Theme.oxide
                }
            }
            Words {
                id: aside
                width: Math.min(natural, words.width)
                text: row.aside
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
        }
    }
}
