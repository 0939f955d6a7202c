// Words: plain text. Wraps and grows; never cut unless `elide` is asked for by the user of it.
// size: one of Theme's type sizes; bold; color: a Theme role (ink by default).
// mute: true inside a control that already says these words to the screen reader.
import QtQuick
import Jambline.Theme

Text {
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
}
