// NoteBanner: one message in three lines between head and body; it pushes, never covers.
// happened (bold), stands (what is kept), actText (the button; empty: none), secondAct (empty: none).
// kind: NoteBanner.Danger, NotSaved, Disputed, Due, Info. details: codes and paths behind a button.
// Signals: acted, secondActed. Height 72 and up.
import QtQuick
import Jambline.Theme
import "said.js" as Said

PaperCard {
    id: banner

    enum Kind { Danger, NotSaved, Disputed, Due, Info }

    property int kind: NoteBanner.Info
    property string happened: ""
    property string stands: ""
    property string actText: ""
    property string secondAct: ""
    property string details: ""
    property bool opened: false

    signal acted
    signal secondActed

    name: Said.join([happened, stands], " ")
    must: kind === NoteBanner.Danger || kind === NoteBanner.NotSaved
    disputed: kind === NoteBanner.Disputed
    minimumHeight: Theme.row
    Accessible.role: Accessible.AlertMessage

    Column {
        width: parent.width
        spacing: 8

        Item {
            width: parent.width
            height: Math.max(mark.height, lines.height)

            StateShape {
                id: mark
                size: 28
                kind: banner.kind === NoteBanner.Disputed ? ShapeKind.Disputed
                    : banner.kind === NoteBanner.Due ? ShapeKind.Waits
                    : banner.kind === NoteBanner.Info ? ShapeKind.None : ShapeKind.Must
            }
            Icon {
                id: info
                visible: banner.kind === NoteBanner.Info
                source: "info"
                size: 28
                color: Theme.pencil
            }
            Column {
                id: lines
                x: 40
                width: parent.width - x
                spacing: 2

                Words {
                    width: parent.width
                    text: banner.happened
                    mute: true
                    bold: true
                }
                Words {
                    width: parent.width
                    visible: text !== ""
                    text: banner.stands
                    mute: true
                    size: Theme.note
                    color: Theme.pencil
                }
                Words {
                    width: parent.width
                    visible: banner.opened
                    text: banner.details
                    size: Theme.note
                    wrapMode: Text.WrapAnywhere
                }
            }
        }
        ActRow {
            width: parent.width
            visible: banner.actText !== "" || banner.details !== ""

            PlainButton {
                objectName: "bannerAct"
                visible: text !== ""
                pressable: visible
                text: banner.actText
                onClicked: banner.acted()
            }
            PlainButton {
                objectName: "bannerSecond"
                visible: text !== ""
                pressable: visible
                text: banner.secondAct
                onClicked: banner.secondActed()
            }
            PlainButton {
                objectName: "bannerDetails"
                visible: banner.details !== ""
                pressable: visible
                text: banner.opened ? qsTr("Hide details") : qsTr("Details")
                onClicked: banner.opened = !banner.opened
            }
        }
    }
}
