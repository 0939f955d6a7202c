// Words: plain text. Wraps and grows; never cut unless `elide` is asked for by the user of it.
// size: one of Theme's type sizes; bold; color: a Theme role (ink by default).
// natural: its width on one line (read only; bind widths to this, never to implicitWidth).
// mute: true inside a control that already says these words to the screen reader.
import QtQuick
import Jambline.Theme

Text {
    id: words

    readonly property real natural: Math.ceil(metrics.advanceWidth) + 1
    property int size: Theme.body
    property bool bold: false
    property bool mute: false

    color: Theme.ink
    textFormat: Text.PlainText
    wrapMode: Text.Wrap
    font.family: Theme.family
    font.pixelSize: size
    font.bold: bold
    Accessible.role: Accessible.StaticText
    Accessible.name: text
    Accessible.ignored: mute

    TextMetrics {
        id: metrics
        font: words.font
        text: words.text
    }
}
