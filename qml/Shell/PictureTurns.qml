// PictureTurns: the screens about pictures, each in its turn: the wall, one picture, before and after.
// work: what is shown. shown: it is one of these; item: its screen. Signal: pictureAsked(picture, among).
// Qt 6.4 makes no Loader's component in a file with bound components, so ids are reached unbound here.
// qmllint disable unqualified
import QtQuick
import Jambline.Job

FocusScope {
    id: turns

    required property ViewModels models
    required property Navigation way
    property int work: Navigation.None
    property bool wide: false
    property real undoRoom: 0
    readonly property Turn front: wallTurn.shown ? wallTurn : lookTurn.shown ? lookTurn : compareTurn
    readonly property bool shown: front.shown
    readonly property var item: front.item

    signal pictureAsked(string picture, var among)

    function showMark(panel: string, mark: string) {
        models.inspect.openPanel(panel);
        models.inspect.choose(mark);
        way.go(Navigation.Panel);
    }

    visible: shown
    focus: shown

    Turn {
        id: wallTurn
        shown: turns.work === Navigation.Wall
        anchors.fill: parent

        sourceComponent: Wall {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "wallScreen"
            wide: turns.wide
            wall: turns.models.wall
            onLookAsked: (picture, among) => turns.pictureAsked(picture, among)
        }
    }
    Turn {
        id: lookTurn
        shown: turns.work === Navigation.Look
        anchors.fill: parent

        sourceComponent: Look {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "lookScreen"
            wide: turns.wide
            look: turns.models.look
            onCompareAsked: {
                turns.models.compare.open(turns.models.look.picture);
                turns.way.go(Navigation.Compare);
            }
            onWallAsked: turns.way.go(Navigation.Wall)
            onMarkAsked: (panel, mark) => turns.showMark(panel, mark)
        }
    }
    Turn {
        id: compareTurn
        shown: turns.work === Navigation.Compare
        anchors.fill: parent

        sourceComponent: Compare {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "compareScreen"
            wide: turns.wide
            compare: turns.models.compare
            onLookAsked: turns.way.go(Navigation.Look)
        }
    }
}
