// FarDigits: digits that are compared with those on another screen, as large as the room allows.
// text ("042 917"); spoken: as they are read aloud; most: the largest size, in px.
import QtQuick
import Jambline.Theme

Words {
    property string spoken: text
    property int most: Theme.far

    size: Math.max(Theme.title, Math.min(most, Math.floor(width / 4.8)))
    bold: true
    wrapMode: Text.NoWrap
    horizontalAlignment: Text.AlignHCenter
    Accessible.name: spoken
}
