// ShopFolderRows: the whole shop out to a folder and entries in from one, with how far it is.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: rows

    required property ShopFolderViewModel folder

    spacing: Theme.gap

    Words {
        width: parent.width
        topPadding: 8
        text: qsTr("The shop as a folder")
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }
    FaceField {
        id: place
        objectName: "folderPlace"
        width: parent.width
        label: qsTr("Where to, or where from")
        text: rows.folder.place
        maximumLength: 4096

        DropArea {
            anchors.fill: parent
            onDropped: drop => {
                if (drop.hasUrls)
                    place.text = drop.urls[0];
            }
        }
    }
    ActRow {
        width: parent.width
        visible: !rows.folder.busy

        PlainButton {
            objectName: "exportShop"
            text: qsTr("Write out")
            secondLine: qsTr("everything, as a backup")
            onClicked: rows.folder.exportTo(place.text)
        }
        PlainButton {
            objectName: "importShop"
            text: qsTr("Take in")
            secondLine: qsTr("entries of this shop")
            onClicked: rows.folder.importFrom(place.text)
        }
    }
    PaperCard {
        width: parent.width
        visible: rows.folder.what !== ""
        name: Array.from([rows.folder.what, rows.folder.kept, rows.folder.todo]).filter(words => words !== "").join(" ")

        Column {
            width: parent.width
            spacing: 6

            Words {
                width: parent.width
                text: rows.folder.what
                mute: true
                bold: true
                wrapMode: Text.WrapAtWordBoundaryOrAnywhere
            }
            Rectangle {
                visible: rows.folder.busy
                width: parent.width
                height: 8
                radius: Theme.corner
                color: Theme.chalk

                Rectangle {
                    width: parent.width * rows.folder.progress
                    height: parent.height
                    radius: Theme.corner
                    color: Theme.ink
                }
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: Array.from([rows.folder.kept, rows.folder.todo]).filter(words => words !== "").join("\n")
                mute: true
                size: Theme.note
                color: Theme.pencil
                wrapMode: Text.WrapAtWordBoundaryOrAnywhere
            }
            PlainButton {
                objectName: "stopFolder"
                visible: rows.folder.busy
                pressable: visible
                width: parent.width
                height: implicitHeight
                text: qsTr("Stop")
                onClicked: rows.folder.stop()
            }
        }
    }
}
