// Body: the screen of where one is. The places stay alive and keep their scroll; a work is shown
// in its turn. Wide windows show the car beside the floor.
import QtQuick
import Jambline.Theme
import Jambline.Floor
import Jambline.Job
import Jambline.Record

FocusScope {
    id: body

    required property ViewModels models
    required property Navigation way
    readonly property bool wide: width >= 840
    readonly property bool beside: wide && way.place === Navigation.Floor && (way.work === Navigation.None || way.work === Navigation.Car)
    readonly property bool carBeside: beside && body.models.session.hasCar
    readonly property int shown: carBeside ? Navigation.Car : way.work
    readonly property real listWidth: wide ? 408 : width

    function toTop() {
        if (way.place === Navigation.Floor)
            floorScreen.toTop();
    }

    function showCar(jobId: string) {
        body.models.session.openCar(jobId);
        way.go(Navigation.Car);
    }

    Floor {
        id: floorScreen
        objectName: "floorScreen"
        visible: body.way.place === Navigation.Floor && (body.way.work === Navigation.None || body.beside)
        focus: visible
        width: body.carBeside ? body.listWidth : Math.min(parent.width, 720)
        x: body.carBeside ? 0 : (parent.width - width) / 2
        height: parent.height
        wide: body.wide
        floor: body.models.floor
        onCarAsked: jobId => body.showCar(jobId)
        onOpenAsked: body.way.go(Navigation.OpenCar)
    }
    Rectangle {
        visible: body.carBeside
        x: body.listWidth
        width: 1
        height: parent.height - 16
        color: Theme.chalk
    }
    Record {
        objectName: "recordScreen"
        readonly property bool here: body.way.place === Navigation.Record && body.way.work === Navigation.None
        visible: here
        focus: here
        anchors.fill: parent
        wide: body.wide
        record: body.models.record
        onCarAsked: jobId => body.showCar(jobId)
    }
    OpenCar {
        objectName: "openCarScreen"
        visible: body.shown === Navigation.OpenCar
        focus: body.way.work === Navigation.OpenCar
        anchors.fill: parent
        wide: body.wide
        form: body.models.openCarForm
        onOpened: jobId => body.showCar(jobId)
        onDropped: body.way.back()
    }
    Car {
        objectName: "carScreen"
        visible: body.shown === Navigation.Car
        focus: body.way.work === Navigation.Car
        x: body.carBeside ? body.listWidth + 1 : 0
        width: parent.width - x
        height: parent.height
        wide: width >= 840
        car: body.models.car
        onInspectAsked: body.way.go(Navigation.Inspect)
        onPartsAsked: body.way.go(Navigation.Parts)
        onTimeLineAsked: body.way.go(Navigation.TimeLine)
    }
    InspectCar {
        objectName: "inspectScreen"
        visible: body.shown === Navigation.Inspect
        focus: body.way.work === Navigation.Inspect
        anchors.fill: parent
        wide: body.wide
        inspect: body.models.inspect
        onPanelAsked: panel => {
            body.models.inspect.openPanel(panel);
            body.way.go(Navigation.Panel);
        }
    }
    InspectPanel {
        objectName: "panelScreen"
        visible: body.shown === Navigation.Panel
        focus: body.way.work === Navigation.Panel
        anchors.fill: parent
        wide: body.wide
        inspect: body.models.inspect
        onNextAsked: panel => {
            body.models.inspect.openPanel(panel);
            if (panel === "")
                body.way.go(Navigation.Inspect);
        }
    }
    Parts {
        objectName: "partsScreen"
        visible: body.shown === Navigation.Parts
        focus: body.way.work === Navigation.Parts
        anchors.fill: parent
        wide: body.wide
        parts: body.models.parts
    }
    TimeLine {
        objectName: "timeLineScreen"
        visible: body.shown === Navigation.TimeLine
        focus: body.way.work === Navigation.TimeLine
        anchors.fill: parent
        wide: body.wide
        timeLine: body.models.timeLine
    }
}
