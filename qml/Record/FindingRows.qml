// FindingRows: what a check has to tell beside whether the log is whole, by kind, each with what it
// means; a row leads to its entry or to the devices. integrity: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: rows

    required property IntegrityViewModel integrity

    spacing: Theme.gap

    Words {
        width: parent.width
        text: qsTr("What there is to know")
        bold: true
        Accessible.role: Accessible.Heading
    }
    Repeater {
        model: rows.integrity.findings

        Column {
            id: one

            required property int index
            required property string key
            required property string kind
            required property string meaning
            required property string words
            required property bool first  // of its kind

            width: rows.width
            spacing: 6

            Words {
                width: parent.width
                visible: one.first
                topPadding: 6
                text: one.kind
                bold: true
            }
            Words {
                width: parent.width
                visible: one.first
                text: one.meaning
                size: Theme.note
                color: Theme.pencil
            }
            PaperCard {
                objectName: "finding"
                width: parent.width
                pressable: true
                quiet: true
                name: qsTr("%1. %2. Opens it.").arg(one.kind).arg(one.words)
                onClicked: rows.integrity.open(one.key)

                Words {
                    width: parent.width
                    text: one.words
                    mute: true
                }
            }
        }
    }
    Words {
        width: parent.width
        visible: text !== ""
        text: rows.integrity.leftOut
        size: Theme.note
        color: Theme.pencil
    }
}
