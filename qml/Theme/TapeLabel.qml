// TapeLabel: what has a name: car, place, tab, tag. text (bold); secondLine below it; aside: more
// words behind it on the same line. back: a chevron, the tape leads back. key seeds the tear
// (text by default). tab: without `chosen` it is plain words, with it a tape. lift: the tape height
// (72 head, 44 card, 32 tag); the target stays as large as the item. tornLeft false: from the edge.
// Signal: clicked, only when `pressable` (off by default). Long names go on below.
import QtQuick
import Jambline.Theme
import "said.js" as Said

Pressable {
    id: label

    property string text: ""
    property string secondLine: ""
    property string aside: ""
    property string key: text
    property bool back: false
    property bool tab: false
    property bool chosen: false
    property bool centered: tab
    property bool tornLeft: true
    property bool tornRight: true
    property real lift: 44
    property int textSize: lift >= 60 ? Theme.screen : lift >= 40 ? Theme.lead : Theme.body
    property real inset: back ? 42 : lift >= 60 ? Theme.gutter : tab ? 7 : 12
    readonly property real air: lift >= 60 ? 16 : 8
    readonly property real room: width - inset - (tab ? 7 : 12)
    readonly property bool folded: aside !== "" && head.natural + 12 + more.natural > room
    readonly property bool broken: head.natural > room
    readonly property bool taped: !tab || chosen

    pressable: false
    name: {
        const all = Said.join([text, aside, secondLine], ", ");
        return back ? qsTr("Back to %1").arg(all) : all;
    }
    implicitWidth: inset + Math.max(head.natural + (aside === "" ? 0 : more.natural + 12), below.natural) + 20
    implicitHeight: Math.max(lift, words.implicitHeight + air)
    Accessible.role: tab ? Accessible.PageTab : pressable ? Accessible.Button : Accessible.StaticText
    Accessible.selected: chosen
    Accessible.ignored: false

    TapePaper {
        anchors.verticalCenter: parent.verticalCenter
        width: parent.width
        height: Math.max(label.lift, words.implicitHeight + label.air)
        visible: label.taped
        key: label.key
        tornLeft: label.tornLeft
        tornRight: label.tornRight
        color: label.pressed ? Qt.darker(Theme.tape, 1.08) : Theme.tape
        crepe: Theme.tapeInk
        Accessible.ignored: true
    }
    Icon {
        visible: label.back
        x: 8
        anchors.verticalCenter: parent.verticalCenter
        source: "back"
        color: Theme.tapeInk
    }
    Column {
        id: words
        x: label.inset
        width: label.room
        anchors.verticalCenter: parent.verticalCenter
        spacing: label.lift >= 60 ? 3 : 0

        Row {
            id: line
            spacing: 12
            x: label.centered ? Math.max(0, (words.width - width) / 2) : 0

            Words {
                id: head
                width: Math.max(0, Math.min(natural, label.room))
                text: label.text
                mute: true
                bold: label.taped
                size: label.textSize
                color: label.taped ? Theme.tapeInk : Theme.ink
                wrapMode: label.broken ? Text.WrapAtWordBoundaryOrAnywhere : Text.NoWrap
            }
            Words {
                id: more
                visible: label.aside !== "" && !label.folded
                anchors.baseline: head.baseline
                text: label.aside
                mute: true
                size: Theme.note
                color: Theme.tapeInk
                wrapMode: Text.NoWrap
            }
        }
        Words {
            width: words.width
            visible: label.folded
            horizontalAlignment: label.centered ? Text.AlignHCenter : Text.AlignLeft
            text: label.aside
            mute: true
            size: Theme.note
            color: label.taped ? Theme.tapeInk : Theme.pencil
        }
        Words {
            id: below
            width: words.width
            visible: text !== ""
            horizontalAlignment: label.centered ? Text.AlignHCenter : Text.AlignLeft
            text: label.secondLine
            mute: true
            size: Theme.note
            color: label.taped ? Theme.tapeInk : Theme.pencil
        }
    }
}
