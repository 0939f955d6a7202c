// PictureFrame: one picture of the record in its place, hatched until it has come, with words when it
// does not come, or a shape where the words have no room; its preview may stand in until then. store,
// file: which; whole: all of it, else it fills the place; checked: hashed again first. here: it is
// shown. The words beside it, or the name of what it stands in, say what it shows.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Item {
    id: frame

    property alias store: picture.store
    property alias file: picture.file
    property alias whole: picture.whole
    property alias checked: picture.checked
    readonly property alias here: picture.here
    readonly property alias trouble: picture.trouble

    PictureItem {
        id: picture
        anchors.fill: parent
        ground: Theme.sheet
        hatch: Theme.edge
    }
    PictureTrouble {
        id: plate
        anchors.horizontalCenter: parent.horizontalCenter
        y: picture.standsIn ? frame.height - height - 2 : (frame.height - height) / 2
        visible: text !== "" && height <= frame.height - 4
        most: parent.width - 8
        text: picture.trouble
    }
    Rectangle {
        x: picture.standsIn ? frame.width - width - 2 : (frame.width - width) / 2
        y: picture.standsIn ? frame.height - height - 2 : (frame.height - height) / 2
        visible: plate.text !== "" && !plate.visible
        width: 32
        height: 32
        radius: Theme.corner
        color: Theme.sheet

        StateShape {
            anchors.centerIn: parent
            kind: ShapeKind.NotYet
            size: 24
        }
    }
}
