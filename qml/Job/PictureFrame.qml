// PictureFrame: one picture of the record in its place, hatched until it has come, with words when it
// does not come, or a shape where the words have no room. store, file: which; whole: all of it, else
// it fills the place; checked: hashed again first. here: it is shown. The words beside it, or the name
// of what it stands in, say what it shows.
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
        anchors.centerIn: parent
        visible: text !== "" && height <= frame.height - 4
        most: parent.width - 8
        text: picture.trouble
    }
    Rectangle {
        anchors.centerIn: parent
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
