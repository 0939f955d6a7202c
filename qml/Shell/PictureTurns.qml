// PictureTurns: the screens about pictures, each in its turn: what is wanted, taking one, the wall, one
// picture, before and after.
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
    readonly property Turn front: wallTurn.shown ? wallTurn : lookTurn.shown ? lookTurn
        : shotsTurn.shown ? shotsTurn : shotTurn.shown ? shotTurn : compareTurn
    readonly property bool shown: front.shown
    readonly property var item: front.item

    signal pictureAsked(string picture, var among)

    function showMark(panel: string, mark: string) {
        models.inspect.openPanel(panel);
        models.inspect.choose(mark);
        way.go(Navigation.Panel);
    }

    function takeShot(stage: string, key: string, from: int) {
        models.shot.open(stage, key);
        way.shotFrom = from;
        way.go(Navigation.Shot);
    }

    function takeMissing(stage: string, from: int) {
        models.shots.choose(stage);
        takeShot(stage, models.shots.nextKey, from);
    }

    function takeOfMark(mark: string, from: int) {
        models.shot.openForMark(mark);
        way.shotFrom = from;
        way.go(Navigation.Shot);
    }

    visible: shown
    focus: shown

    Turn {
        id: shotsTurn
        shown: turns.work === Navigation.Shots
        anchors.fill: parent

        sourceComponent: Shots {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "shotsScreen"
            wide: turns.wide
            shots: turns.models.shots
            store: turns.models.wall.store
            onShotAsked: (stage, key) => turns.takeShot(stage, key, Navigation.Shots)
            onPictureAsked: picture => {
                turns.models.look.open(picture, []);
                turns.way.lookFrom = Navigation.Shots;
                turns.way.go(Navigation.Look);
            }
            onWallAsked: turns.way.go(Navigation.Wall)
        }
    }
    Turn {
        id: shotTurn
        shown: turns.work === Navigation.Shot
        anchors.fill: parent

        sourceComponent: Shot {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "shotScreen"
            wide: turns.wide
            shot: turns.models.shot
            onFinished: turns.way.back()
        }
    }

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
            onShotsAsked: turns.way.go(Navigation.Shots)
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
