// Later: what the first frame does without. file: a QML file of this folder, whose root fills this; given:
// its first properties. begins: it may be made ready, a little in every frame; needed: it has to be there
// now. item: it, null before. made(): it, made now if it was not there.
import QtQuick

FocusScope {
    id: later

    required property string file
    required property var given
    property bool begins: false
    property bool needed: false
    property var item: null
    property Component component: null
    property var growing: null

    function made(): var {
        if (item === null && growing !== null)
            growing.forceCompletion();
        if (item === null)
            keep(Qt.createComponent(file).createObject(later, given));
        return item;
    }

    function begin() {
        if (item !== null || component !== null)
            return;
        component = Qt.createComponent(file, Component.Asynchronous);
        if (component.status === Component.Loading)
            component.statusChanged.connect(grow);
        else
            grow();
    }

    function grow() {
        if (item !== null || growing !== null)
            return;
        if (component.status !== Component.Ready) {
            console.error(component.errorString());
            return;
        }
        growing = component.incubateObject(later, given);
        growing.onStatusChanged = status => {
            if (status === Component.Ready)
                keep(growing.object);
        };
        if (growing.status === Component.Ready)
            keep(growing.object);
    }

    function keep(made: Item) {
        if (item === null)
            item = made;
    }

    onBeginsChanged: if (begins)
        begin()
    onNeededChanged: if (needed)
        made()
}
