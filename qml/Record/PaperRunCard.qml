// PaperRunCard: how far a file is, or what came of it, with a stop. run: of the view model.
import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    required property PaperRun run

    visible: run.what !== ""
    must: run.failed
    name: Array.from([run.what, run.kept, run.todo]).filter(words => words !== "").join(" ")

    Column {
        width: parent.width
        spacing: 6

        Words {
            objectName: "paperWhat"
            width: parent.width
            text: card.run.what
            mute: true
            bold: true
            wrapMode: Text.WrapAtWordBoundaryOrAnywhere
        }
        Rectangle {
            visible: card.run.busy
            width: parent.width
            height: 8
            radius: Theme.corner
            color: Theme.chalk

            Rectangle {
                width: parent.width * card.run.progress
                height: parent.height
                radius: Theme.corner
                color: Theme.ink
            }
        }
        Words {
            width: parent.width
            visible: text !== ""
            text: Array.from([card.run.kept, card.run.todo]).filter(words => words !== "").join("\n")
            mute: true
            size: Theme.note
            color: Theme.pencil
            wrapMode: Text.WrapAtWordBoundaryOrAnywhere
        }
        PlainButton {
            objectName: "paperStop"
            visible: card.run.busy
            pressable: visible
            width: parent.width
            height: implicitHeight
            text: qsTr("Stop")
            onClicked: card.run.stop()
        }
    }
}
