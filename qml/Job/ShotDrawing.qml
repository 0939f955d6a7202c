// ShotDrawing: where to stand for a picture, in pencil on paper. view: job::ShotView. The words
// beside it say the same.
import QtQuick
import Jambline.Theme
import Jambline.Screens

ShotItem {
    implicitWidth: 64
    implicitHeight: 64
    line: Theme.pencil
    eye: Theme.blue
    Accessible.ignored: true
}
