// SyncTurns: sending and the devices of the shop, each in its turn.
// work: what is shown. shown: it is one of these; item: its screen. Signals: joinAsked, exportAsked.
// Qt 6.4 makes no Loader's component in a file with bound components, so ids are reached unbound here.
// qmllint disable unqualified
import QtQuick
import Jambline.Record

FocusScope {
    id: turns

    required property ViewModels models
    required property Navigation way
    property int work: Navigation.None
    property bool wide: false
    property real undoRoom: 0
    readonly property Turn front: sendingTurn.shown ? sendingTurn : devicesTurn
    readonly property bool shown: front.shown
    readonly property var item: front.item

    signal joinAsked
    signal exportAsked

    function showDevices(from: int) {
        way.devicesFrom = from;
        way.go(Navigation.Devices);
    }

    visible: shown
    focus: shown

    Turn {
        id: sendingTurn
        shown: turns.work === Navigation.Sending
        anchors.fill: parent

        sourceComponent: Sending {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "sendingScreen"
            wide: turns.wide
            sync: turns.models.sync
            devices: turns.models.devices
            onJoinAsked: turns.joinAsked()
            onExportAsked: turns.exportAsked()
            onDevicesAsked: turns.showDevices(Navigation.Sending)
        }
    }
    Turn {
        id: devicesTurn
        shown: turns.work === Navigation.Devices
        anchors.fill: parent

        sourceComponent: Devices {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "devicesScreen"
            wide: turns.wide
            devices: turns.models.devices
        }
    }
}
