// StateShape: the shape of a state; always beside its word. kind: ShapeKind.Done and so on.
// size: 16 to 40 dp. key: seeds the wobble of a ring. ground: what shows inside (sheet).
// The word beside it is what the screen reader says, so the shape itself stays silent.
import QtQuick
import Jambline.Theme

StatePaper {
    id: shape

    property real size: 24

    readonly property color role: {
        switch (kind) {
        case ShapeKind.Done:
            return Theme.green;
        case ShapeKind.Running:
            return Theme.blue;
        case ShapeKind.Waits:
            return Theme.ochre;
        case ShapeKind.Must:
        case ShapeKind.Disputed:
        case ShapeKind.Respray:
        case ShapeKind.Ring:
            return Theme.oxide;
        case ShapeKind.Unseen:
            return Theme.edge;
        case ShapeKind.NotYet:
            return Theme.pencil;
        default:
            return Theme.ink;
        }
    }

    implicitWidth: kind === ShapeKind.None ? 0 : size
    implicitHeight: kind === ShapeKind.None ? 0 : size
    width: implicitWidth
    height: implicitHeight
    color: role
    ground: Theme.sheet
    Accessible.ignored: true
}
