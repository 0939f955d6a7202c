// MarginLine: the quiet line on top: what is not sent (left), the nearest countdown (middle, with
// its name), wall time (right). syncText; countdownText ("Booth 2 clears 10:49"), empty: none;
// urgent: the countdown is bold; wallText ("10:42"); wallDoubtful: this device's clock is in doubt.
// 28 high, grows with its words; too low for a target: a press on it is a short cut to what also has a
// button elsewhere. Signal: pressed.
import QtQuick
import Jambline.Theme
import "said.js" as Said

Item {
    id: margin

    property string syncText: ""
    property string countdownText: ""
    property bool urgent: false
    property string wallText: ""
    property bool wallDoubtful: false

    signal pressed

    readonly property bool folded: countdown.visible
        && sync.natural + countdown.natural + wall.width + 2 * Theme.gutter + 32 > width

    implicitWidth: 412
    implicitHeight: Math.max(Theme.margin, sync.height + 8 + (folded ? countdown.height : 0))
    Accessible.role: Accessible.StatusBar
    Accessible.name: Said.join([syncText, countdownText, wallText], ", ")

    TapHandler {
        onTapped: margin.pressed()
    }
    Words {
        id: sync
        x: Theme.gutter
        y: Math.max(4, (Theme.margin - implicitHeight) / 2)
        width: wall.x - x - 12
        text: margin.syncText
        mute: true
        size: Theme.small
        color: Theme.pencil
    }
    Words {
        id: countdown
        visible: text !== ""
        x: margin.folded ? Theme.gutter : wall.x - width - 16
        y: margin.folded ? sync.y + sync.height : sync.y
        width: margin.folded ? margin.width - 2 * Theme.gutter : implicitWidth
        text: margin.countdownText
        mute: true
        bold: margin.urgent
        size: Theme.small
        color: Theme.ink
    }
    TimeText {
        id: wall
        anchors.right: parent.right
        anchors.rightMargin: Theme.gutter
        y: sync.y - 1
        text: margin.wallText
        doubtful: margin.wallDoubtful
        mute: true
        size: Theme.note
        color: Theme.pencil
    }
}
