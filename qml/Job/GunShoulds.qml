// GunShoulds: what else is worth a look before the gun, quietly; a press says yes or takes it back.
// check: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: part

    required property BeforeGunViewModel check

    visible: list.count > 0
    spacing: Theme.gap

    Words {
        width: parent.width
        topPadding: Theme.gap
        text: qsTr("Should, not a must")
        size: Theme.note
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }
    Grid {
        id: grid
        width: parent.width
        columns: Theme.textScale > 1.2 || width < 300 ? 1 : 2
        columnSpacing: 6
        rowSpacing: 6

        Repeater {
            id: list
            model: part.check.shoulds

            PaperCard {
                id: tile

                required property string key
                required property string title
                required property string words
                required property bool said
                required property string spoken

                width: (grid.width - (grid.columns - 1) * grid.columnSpacing) / grid.columns
                height: implicitHeight
                pressable: true
                quiet: true
                padding: 8
                name: spoken
                onClicked: part.check.flipShould(key)

                Item {
                    width: parent.width
                    height: Math.max(mark.height, about.height)

                    StateShape {
                        id: mark
                        anchors.verticalCenter: parent.verticalCenter
                        kind: tile.said ? ShapeKind.Done : ShapeKind.NotYet
                        key: tile.title
                        size: 20
                    }
                    Column {
                        id: about
                        x: 28
                        width: parent.width - x
                        anchors.verticalCenter: parent.verticalCenter

                        Words {
                            width: parent.width
                            text: tile.title
                            mute: true
                            size: Theme.note
                        }
                        Words {
                            width: parent.width
                            visible: text !== ""
                            text: tile.words
                            mute: true
                            size: Theme.note
                            color: Theme.pencil
                        }
                    }
                }
            }
        }
    }
}
