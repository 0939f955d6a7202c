// TimeText: draws every time: B612 digits, the colon as two squares. Give either `text` (already
// written, "16:30"), or `form` with `seconds` (Running, Countdown, Duration) or `at_ms` and `now_ms`
// (Wall); forms are those of TimeWords. text wins when it is not empty.
// size, bold, color; doubtful: wavy line below. shown: the words as drawn (read only).
import QtQuick
import Jambline.Theme

TimePaper {
    id: time

    property string text: ""
    property alias form: writer.form
    property alias seconds: writer.seconds
    property alias at_ms: writer.at_ms
    property alias now_ms: writer.now_ms
    property bool mute: false
    readonly property string shown: text !== "" ? text : writer.words

    words: shown
    size: Theme.body
    family: Theme.family
    color: Theme.ink
    width: implicitWidth
    height: implicitHeight
    Accessible.role: Accessible.StaticText
    Accessible.name: doubtful ? qsTr("%1, clock in doubt").arg(shown) : shown
    Accessible.ignored: mute

    TimeWords {
        id: writer
        twelveHour: Theme.twelveHour
    }
}
