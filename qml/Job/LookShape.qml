// LookShape: how a panel stands, as a shape: look is a PanelLook. marks: the count of a ring, 0
// none. size: dp. A word always stands beside it, so it is silent to the reader.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Item {
    id: shape

    property int look: PanelLook.NotYet
    property int marks: 0
    property real size: 22
    property string key: ""

    readonly property bool iconic: look === PanelLook.BackToBody || look === PanelLook.Ask

    width: counted.visible ? 38 : size
    height: width
    implicitWidth: width
    implicitHeight: height

    StateShape {
        anchors.centerIn: parent
        visible: !shape.iconic && !counted.visible
        size: shape.size
        key: shape.key
        kind: shape.look === PanelLook.Clean ? ShapeKind.Done
            : shape.look === PanelLook.ToCorrect ? ShapeKind.Ring
            : shape.look === PanelLook.Redo ? ShapeKind.Respray
            : shape.look === PanelLook.Disputed ? ShapeKind.Disputed : ShapeKind.Unseen
    }
    PencilRing {
        id: counted
        visible: shape.look === PanelLook.ToCorrect && shape.marks > 0
        x: shape.width / 2
        y: shape.height / 2
        size: 38
        counted: true
        together: shape.marks
        key: shape.key
    }
    Rectangle {
        anchors.centerIn: parent
        visible: shape.iconic
        width: shape.size + 6
        height: width
        radius: Theme.corner
        color: Theme.sheet
        border.width: 2
        border.color: Theme.oxide

        Icon {
            anchors.centerIn: parent
            source: shape.look === PanelLook.Ask ? "hand" : "swap"
            size: shape.size
            color: Theme.oxide
        }
    }
}
