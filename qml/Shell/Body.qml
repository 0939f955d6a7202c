// Body: the screen of where one is: the floor, and every other in its turn. Wide windows show the car
// beside the floor. seen: the floor was drawn, the other screens may be made ready.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Floor

FocusScope {
    id: body

    required property ViewModels models
    required property Navigation way
    property bool seen: false
    readonly property bool wide: width >= 840
    readonly property bool desk: width >= 1200
    readonly property bool beside: wide && way.place === Navigation.Floor && (way.work === Navigation.None || way.work === Navigation.Car)
    readonly property bool carBeside: beside && body.models.session.hasCar
    readonly property bool floorAlone: way.place === Navigation.Floor && way.work === Navigation.None && !carBeside
    readonly property int shown: carBeside ? Navigation.Car : way.work
    readonly property real listWidth: desk ? width - 568 : wide ? 408 : width
    // The screen whose acts the undo row stands above, and the room that it takes there.
    property real undoRoom: 0
    readonly property var front: later.item?.front ?? floorScreen
    readonly property var frontScreen: front === floorScreen ? floorScreen : front.item
    readonly property real leastHeight: Math.max(Theme.textScale > 1.2 && !wide ? 420 : 320, frontScreen?.implicitHeight ?? 0)
    readonly property real actsTop: frontScreen?.actsTop ?? height

    signal whoAsked
    signal beforeCutAsked
    signal productsAsked
    signal joinAsked
    signal exportAsked
    signal forgetAsked(string personId)

    function toTop() {
        if (way.place === Navigation.Floor)
            floorScreen.toTop();
        else
            later.made().toTop();
    }

    function showCar(jobId: string) {
        body.models.session.openCar(jobId);
        way.go(Navigation.Car);
    }

    function showBooth(booth: string) {
        later.made().boothTurns.showBooth(booth);
    }

    Floor {
        id: floorScreen
        objectName: "floorScreen"
        visible: body.way.place === Navigation.Floor && (body.way.work === Navigation.None || body.beside)
        focus: visible
        width: body.carBeside ? body.listWidth : body.desk ? parent.width : Math.min(parent.width, 720)
        x: body.carBeside ? 0 : (parent.width - width) / 2
        height: parent.height
        desk: body.desk
        aside: body.carBeside
        undoRoom: body.front === floorScreen ? body.undoRoom : 0
        floor: body.models.floor
        demo: body.models.demo
        leftovers: body.models.leftovers
        onCarAsked: jobId => body.showCar(jobId)
        onOpenAsked: body.way.go(Navigation.OpenCar)
        onGunAsked: jobId => later.made().gunTurns.showGunOf(jobId)
        hand: body.models.hand
        devices: body.models.devices
        join: body.models.join
        onDevicesAsked: later.made().syncTurns.showDevices(Navigation.None)
        onJoinAsked: body.joinAsked()
        onPartAsked: key => later.made().correctTurns.assembly.showPart(key)
        onWhereAsked: later.made().correctTurns.assembly.showWhere()
    }
    Rectangle {
        visible: body.carBeside
        x: body.listWidth
        width: 1
        height: parent.height - 16
        color: Theme.chalk
    }
    Later {
        id: later
        anchors.fill: parent
        focus: item?.shown ?? false
        file: "Turns.qml"
        given: ({ body: body })
        begins: body.seen
        needed: !body.floorAlone
    }
}
