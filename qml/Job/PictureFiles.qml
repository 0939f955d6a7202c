// PictureFiles: the dialogs of the system for picture files and for a folder to watch. Signals:
// chosen(urls), folderChosen(folder).
import QtCore
import QtQuick
import QtQuick.Dialogs

Item {
    id: files

    signal chosen(var urls)
    signal folderChosen(url folder)

    function ask() {
        pictures.open();
    }

    function askFolder() {
        folder.open();
    }

    FileDialog {
        id: pictures
        title: qsTr("Pictures to take in")
        fileMode: FileDialog.OpenFiles
        currentFolder: StandardPaths.writableLocation(StandardPaths.PicturesLocation)
        nameFilters: [qsTr("Pictures (%1)").arg("*.jpg *.jpeg *.png *.JPG *.JPEG *.PNG"), qsTr("All files (%1)").arg("*")]
        onAccepted: files.chosen(selectedFiles)
    }
    FolderDialog {
        id: folder
        title: qsTr("Folder where a camera puts its pictures")
        onAccepted: files.folderChosen(selectedFolder)
    }
}
