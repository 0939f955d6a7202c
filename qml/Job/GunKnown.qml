// GunKnown: what the shop's registers bear out, each with its age. check: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    required property BeforeGunViewModel check

    visible: rows.count > 0

    Column {
        width: parent.width
        spacing: 8

        Words {
            width: parent.width
            text: qsTr("Known from the registers")
            size: Theme.note
            color: Theme.pencil
        }
        Repeater {
            id: rows
            model: card.check.known

            Item {
                id: row

                required property string title
                required property string words
                required property string spoken
                readonly property bool stacked: name.natural + age.natural + 44 > width

                width: parent.width
                height: Math.max(name.height, age.y + age.height)
                Accessible.role: Accessible.StaticText
                Accessible.name: spoken

                StateShape {
                    id: mark
                    y: 1
                    kind: ShapeKind.Done
                    key: row.title
                    size: 18
                }
                Words {
                    id: name
                    x: 26
                    width: row.stacked ? parent.width - x : natural
                    text: row.title
                    mute: true
                }
                Words {
                    id: age
                    x: row.stacked ? 26 : parent.width - width
                    y: row.stacked ? name.height : (name.height - height) / 2
                    width: row.stacked ? parent.width - x : natural
                    text: row.words
                    mute: true
                    size: Theme.note
                    color: Theme.pencil
                }
            }
        }
    }
}
