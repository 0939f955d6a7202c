// Body: the screen of where one is. The places stay alive and keep their scroll; a work is made
// when it is opened. Wide windows show the car beside the floor.
pragma ComponentBehavior: Bound

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
    Loader {
        id: recordScreen
        objectName: "recordScreen"
        property bool wanted: false
        readonly property bool here: body.way.place === Navigation.Record && body.way.work === Navigation.None
        onHereChanged: if (here) wanted = true
        active: wanted
        visible: here
        focus: here
        anchors.fill: parent
        sourceComponent: Record {
            focus: true
            wide: body.wide
            record: body.models.record
            onCarAsked: jobId => body.showCar(jobId)
        }
    }
    Loader {
        id: work
        objectName: "workScreen"
        readonly property int shown: body.carBeside ? Navigation.Car : body.way.work
        visible: shown !== Navigation.None
        focus: body.way.work !== Navigation.None
        x: body.carBeside ? body.listWidth + 1 : 0
        width: parent.width - x
        height: parent.height
        sourceComponent: {
            switch (shown) {
            case Navigation.OpenCar:
                return openCarScreen;
            case Navigation.Car:
                return carScreen;
            case Navigation.Inspect:
                return inspectScreen;
            case Navigation.Panel:
                return panelScreen;
            case Navigation.Parts:
                return partsScreen;
            case Navigation.TimeLine:
                return timeLineScreen;
            default:
                return null;
            }
        }
    }
    Component {
        id: openCarScreen

        OpenCar {
            focus: true
            wide: body.wide
            form: body.models.openCarForm
            onOpened: jobId => body.showCar(jobId)
            onDropped: body.way.back()
        }
    }
    Component {
        id: carScreen

        Car {
            focus: true
            wide: width >= 840
            car: body.models.car
            onInspectAsked: body.way.go(Navigation.Inspect)
            onPartsAsked: body.way.go(Navigation.Parts)
            onTimeLineAsked: body.way.go(Navigation.TimeLine)
        }
    }
    Component {
        id: inspectScreen

        InspectCar {
            focus: true
            wide: body.wide
            inspect: body.models.inspect
            onPanelAsked: panel => {
                body.models.inspect.openPanel(panel);
                body.way.go(Navigation.Panel);
            }
        }
    }
    Component {
        id: panelScreen

        InspectPanel {
            focus: true
            wide: body.wide
            inspect: body.models.inspect
            onNextAsked: panel => {
                body.models.inspect.openPanel(panel);
                if (panel === "")
                    body.way.go(Navigation.Inspect);
            }
        }
    }
    Component {
        id: partsScreen

        Parts {
            focus: true
            wide: body.wide
            parts: body.models.parts
        }
    }
    Component {
        id: timeLineScreen

        TimeLine {
            focus: true
            wide: body.wide
            timeLine: body.models.timeLine
        }
    }
}
