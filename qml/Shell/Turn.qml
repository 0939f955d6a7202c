// Turn: a screen that is made when its turn comes first, and has the focus while it is shown. stays:
// it is kept and scrolls on where it was; else it is gone when something else is shown.
import QtQuick

Loader {
    property bool shown: false
    property bool stays: false
    property bool seen: false

    active: shown || (stays && seen)
    visible: shown
    focus: shown
    onLoaded: seen = true
}
