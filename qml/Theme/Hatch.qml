// Hatch: the texture of "not yet" and "waits". wide: the wider of the two spacings.
// color: edge by default; radius: rounded corners to keep inside.
import QtQuick
import Jambline.Theme

HatchPaper {
    property bool wide: false

    color: Theme.edge
    spacing: wide ? 8 : 5
    thickness: 1
    Accessible.ignored: true
}
