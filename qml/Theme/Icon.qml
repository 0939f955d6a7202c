// Icon: one drawing of icons/ in a role color. source: its file name without ending.
// size: dp (24 is the grid). Decoration: the control around it has the name.
import QtQuick
import Jambline.Theme

IconPaper {
    property real size: 24

    implicitWidth: size
    implicitHeight: size
    width: size
    height: size
    color: Theme.ink
    Accessible.ignored: true
}
