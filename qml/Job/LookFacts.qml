// LookFacts: what is known of the picture: its notes, each of which can be taken back; its mark; the
// facts of its file; filing it elsewhere. look: the view model. Signals: markAsked, filingAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: facts

    required property LookViewModel look

    signal markAsked
    signal filingAsked

    spacing: Theme.gap

    PlainButton {
        objectName: "lookMark"
        visible: facts.look.markKey !== ""
        pressable: visible
        width: parent.width
        height: implicitHeight
        text: qsTr("Show the mark on the panel")
        secondLine: facts.look.markWords
        onClicked: facts.markAsked()
    }
    PlainButton {
        objectName: "lookFiling"
        visible: facts.look.writable
        pressable: visible
        width: parent.width
        height: implicitHeight
        text: qsTr("File it elsewhere")
        secondLine: facts.look.title
        onClicked: facts.filingAsked()
    }
    Words {
        visible: facts.look.noteCount > 0
        width: parent.width
        topPadding: 8
        text: qsTr("Drawn on it. The file itself stays as it is.")
        bold: true
        Accessible.role: Accessible.Heading
    }
    Repeater {
        model: facts.look.notes

        PaperCard {
            id: note

            required property string key
            required property string words
            required property string line

            width: facts.width

            Item {
                width: parent.width
                height: Math.max(said.height, back.height)

                Column {
                    id: said
                    width: parent.width - (back.visible ? back.width + 8 : 0)
                    anchors.verticalCenter: parent.verticalCenter
                    spacing: 2

                    Words {
                        width: parent.width
                        text: note.words
                    }
                    Words {
                        width: parent.width
                        text: note.line
                        size: Theme.note
                        color: Theme.pencil
                    }
                }
                PlainButton {
                    id: back
                    objectName: "noteBack"
                    visible: facts.look.writable
                    pressable: visible
                    anchors.right: parent.right
                    width: Math.min(parent.width / 2, Math.max(96, implicitWidth))
                    height: visible ? implicitHeight : 0
                    text: qsTr("Take back")
                    name: qsTr("Take back: %1").arg(note.words)
                    onClicked: facts.look.takeNoteBack(note.key)
                }
            }
        }
    }
    Words {
        width: parent.width
        topPadding: 8
        text: qsTr("The file")
        bold: true
        Accessible.role: Accessible.Heading
    }
    Repeater {
        model: facts.look.facts

        DetailLine {
            width: facts.width
        }
    }
}
