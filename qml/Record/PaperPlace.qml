// PaperPlace: the folder that a file goes into, typed or chosen. label; place: as typed.
import QtQuick
import QtQuick.Dialogs
import Jambline.Theme

Column {
    id: where

    property string label: qsTr("Folder")
    property alias place: field.text

    spacing: Theme.gap

    FaceField {
        id: field
        objectName: "paperPlace"
        width: parent.width
        label: where.label
        maximumLength: 4096
    }
    PlainButton {
        objectName: "paperChoose"
        width: parent.width
        height: implicitHeight
        text: qsTr("Choose a folder")
        onClicked: folders.open()
    }
    FolderDialog {
        id: folders
        title: where.label
        onAccepted: field.text = selectedFolder
    }
}
