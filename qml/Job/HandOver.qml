// HandOver: the note that the customer takes home, as it will be printed, and saving it. note: the
// view model; wide: the note left, saving it in a pane right.
pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Dialogs
import Jambline.Theme
import Jambline.Screens

Item {
    id: page

    required property HandOverViewModel note
    property bool wide: false
    property real undoRoom: 0  // kept free above the acts
    readonly property real actsTop: acts.y
    readonly property real actsX: acts.x
    readonly property real actsWidth: acts.width
    readonly property real paneWidth: wide ? 376 : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth

    implicitHeight: acts.height + undoRoom + 220
    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Hand-over note")

    Flickable {
        width: page.wide ? page.paneX : parent.width
        height: page.wide ? parent.height : acts.y - Theme.gap - page.undoRoom
        contentHeight: sheet.height + 2 * Theme.gap + (page.wide ? 0 : below.height + Theme.gap)
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        PaperCard {
            id: sheet
            x: Theme.gutter
            y: 4
            width: Math.min(parent.width - 2 * Theme.gutter, 640)
            padding: 16

            Column {
                id: body
                width: parent.width
                spacing: 6

                Words {
                    width: parent.width
                    visible: text !== ""
                    text: page.note.shop
                    color: Theme.pencil
                }
                Words {
                    width: parent.width
                    text: page.note.title
                    bold: true
                    size: Theme.screen
                    Accessible.role: Accessible.Heading
                }
                Words {
                    width: parent.width
                    text: page.note.subtitle
                    size: Theme.lead
                }
                Repeater {
                    model: page.note.lines

                    Column {
                        id: line

                        required property string part
                        required property string label
                        required property string words

                        width: body.width
                        spacing: 2
                        topPadding: part === "" ? 0 : Theme.gap

                        Words {
                            width: parent.width
                            visible: text !== ""
                            text: line.part
                            bold: true
                            size: Theme.lead
                            Accessible.role: Accessible.Heading
                        }
                        Words {
                            width: parent.width
                            visible: text !== ""
                            text: line.label
                            size: Theme.note
                            color: Theme.pencil
                        }
                        Words {
                            width: parent.width
                            visible: text !== ""
                            text: line.words
                            wrapMode: Text.WrapAtWordBoundaryOrAnywhere
                        }
                    }
                }
                SignatureItem {
                    visible: page.note.signedWords !== ""
                    width: Math.min(parent.width, 300)
                    height: 110
                    open: false
                    strokes: page.note.strokes
                    ink: Theme.ink
                    Accessible.ignored: true
                }
                Words {
                    width: parent.width
                    visible: text !== ""
                    text: page.note.signedWords
                    size: Theme.note
                }
                Words {
                    width: parent.width
                    topPadding: Theme.gap
                    text: page.note.foot
                    size: Theme.note
                    color: Theme.pencil
                }
            }
        }
        Item {
            id: below
            visible: !page.wide
            x: Theme.gutter
            y: sheet.y + sheet.height + Theme.gap
            width: sheet.width
            height: where.height
        }
    }
    Item {
        id: beside
        visible: page.wide
        x: page.paneX
        y: 4
        width: page.paneWidth
        height: where.height
    }
    Column {
        id: where
        parent: page.wide ? beside : below
        width: parent.width
        spacing: Theme.gap

        FaceField {
            id: place
            objectName: "notePlace"
            width: parent.width
            label: qsTr("Folder for the PDF")
            text: page.note.place
            maximumLength: 4096
        }
        PlainButton {
            objectName: "noteChoose"
            width: parent.width
            height: implicitHeight
            text: qsTr("Choose a folder")
            onClicked: folders.open()
        }
    }
    FolderDialog {
        id: folders
        title: qsTr("Folder for the hand-over note")
        onAccepted: place.text = selectedFolder
    }
    Column {
        id: acts
        x: page.paneX
        width: page.paneWidth
        y: parent.height - height - Theme.gap
        spacing: Theme.gap

        PaperCard {
            width: parent.width
            visible: page.note.what !== ""
            must: page.note.failed
            name: Array.from([page.note.what, page.note.kept, page.note.todo]).filter(words => words !== "").join(" ")

            Column {
                width: parent.width
                spacing: 2

                Words {
                    objectName: "noteWhat"
                    width: parent.width
                    text: page.note.what
                    mute: true
                    bold: true
                    wrapMode: Text.WrapAtWordBoundaryOrAnywhere
                }
                Words {
                    width: parent.width
                    visible: text !== ""
                    text: Array.from([page.note.kept, page.note.todo]).filter(words => words !== "").join("\n")
                    mute: true
                    size: Theme.note
                    color: Theme.pencil
                }
            }
        }
        SlabButton {
            objectName: "noteSave"
            width: parent.width
            height: implicitHeight
            text: qsTr("Save the note")
            secondLine: page.note.busy ? qsTr("it is being written") : qsTr("as a PDF, to print or to send")
            waits: page.note.busy
            onClicked: page.note.save(place.text)
        }
    }
}
