// FitTurns: the fit of the panels in its turn. work: what is shown. shown: it is that; item: its screen.
// Signals: whoAsked, shotAsked(stage, key).
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
    readonly property bool shown: fitTurn.shown
    readonly property var item: fitTurn.item

    signal whoAsked
    signal shotAsked(string stage, string key)

    // panel: the entry's word; "" the list of them.
    function showFit(panel: string, from: int) {
        models.fit.openPanel(panel);
        way.fitFrom = from;
        way.go(Navigation.Fit);
    }

    visible: shown
    focus: shown

    Turn {
        id: fitTurn
        shown: turns.work === Navigation.Fit
        anchors.fill: parent

        sourceComponent: Fit {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "fitScreen"
            wide: turns.wide
            fit: turns.models.fit
            inspect: turns.models.inspect
            onWhoAsked: turns.whoAsked()
            onShotAsked: (stage, key) => turns.shotAsked(stage, key)
        }
    }
}
