// Body: the screen of where one is. The places stay alive and keep their scroll; a work is there
// only in its turn: what nobody sees costs no start and no act anything. Wide windows show the car
// beside the floor. Qt 6.4 makes no Loader's component in a file with bound components: ids are unbound.
// qmllint disable unqualified
import QtQuick
import Jambline.Theme
import Jambline.Floor
import Jambline.Job
import Jambline.Booth
import Jambline.Record

FocusScope {
    id: body

    required property ViewModels models
    required property Navigation way
    readonly property bool wide: width >= 840
    readonly property bool desk: width >= 1200
    readonly property bool beside: wide && way.place === Navigation.Floor && (way.work === Navigation.None || way.work === Navigation.Car)
    readonly property bool carBeside: beside && body.models.session.hasCar
    readonly property alias boothTurns: boothTurns
    readonly property alias syncTurns: syncTurns
    readonly property int shown: carBeside ? Navigation.Car : way.work
    readonly property real listWidth: desk ? width - 568 : wide ? 408 : width
    // The screen whose acts the undo row stands above, and the room that it takes there.
    property real undoRoom: 0

    signal whoAsked
    signal beforeCutAsked
    signal productsAsked
    signal joinAsked
    signal exportAsked
    signal forgetAsked(string personId)

    readonly property var groups: [correctTurns, gunTurns, hoursTurns, handOverTurns, boothTurns, pictureTurns, syncTurns, carRecordTurns, questionTurns]
    readonly property var front: Array.from([carTurn, openCarTurn, inspectTurn, panelTurn, evidenceTurn, boothTurn]).concat(groups,
        [dirtTurn, recordTurn]).find(turn => turn.shown) ?? floorScreen
    readonly property var frontScreen: front === floorScreen ? floorScreen : front.item
    readonly property real leastHeight: Math.max(Theme.textScale > 1.2 && !wide ? 420 : 320, frontScreen?.implicitHeight ?? 0)
    readonly property real actsTop: frontScreen?.actsTop ?? height

    function toTop() {
        if (way.place === Navigation.Floor)
            floorScreen.toTop();
        else if (way.place === Navigation.Booth)
            (boothTurn.item as Booth)?.toTop();
    }

    function showFilm(panel: string, from: int) {
        body.models.film.openPanel(panel);
        way.filmFrom = from;
        way.go(Navigation.Film);
    }

    function showPicture(picture: string, among: var, from: int) {
        body.models.look.open(picture, among);
        way.lookFrom = from;
        way.go(Navigation.Look);
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
        onGunAsked: jobId => gunTurns.showGunOf(jobId)
        hand: body.models.hand
        devices: body.models.devices
        join: body.models.join
        onDevicesAsked: syncTurns.showDevices(Navigation.None)
        onJoinAsked: body.joinAsked()
        onPartAsked: key => correctTurns.assembly.showPart(key)
        onWhereAsked: correctTurns.assembly.showWhere()
    }
    Rectangle {
        visible: body.carBeside
        x: body.listWidth
        width: 1
        height: parent.height - 16
        color: Theme.chalk
    }
    Turn {
        id: recordTurn
        shown: body.way.place === Navigation.Record && body.way.work === Navigation.None
        stays: true
        anchors.fill: parent

        sourceComponent: Record {
            focus: true
            undoRoom: body.undoRoom
            objectName: "recordScreen"
            wide: body.wide
            record: body.models.record
            onCarAsked: jobId => body.showCar(jobId)
            onHistoryAsked: entryId => carRecordTurns.showHistory(entryId)
            onEntryAsked: (jobId, entryId) => {
                body.models.session.openCar(jobId);
                carRecordTurns.showHistory(entryId);
            }
            onDevicesAsked: syncTurns.showDevices(Navigation.None)
            ask: body.models.question
            onQuestionAsked: key => questionTurns.show(key)
            onDirtAsked: body.way.go(Navigation.DirtOverTime)
            onHoursAsked: body.way.go(Navigation.Hours)
            onSendingAsked: body.way.go(Navigation.Sending)
        }
    }
    Turn {
        id: dirtTurn
        shown: body.shown === Navigation.DirtOverTime
        anchors.fill: parent

        sourceComponent: DirtOverTime {
            focus: true
            undoRoom: body.undoRoom
            objectName: "dirtScreen"
            wide: body.wide
            dirt: body.models.dirt
            onCarAsked: jobId => body.showCar(jobId)
            onFloorAsked: body.way.toPlace(Navigation.Floor)
            onBoothsAsked: body.way.toPlace(Navigation.Booth)
        }
    }
    Turn {
        id: boothTurn
        shown: body.way.place === Navigation.Booth && body.way.work === Navigation.None
        stays: true
        anchors.fill: parent

        sourceComponent: Booth {
            focus: true
            undoRoom: body.undoRoom
            objectName: "boothScreen"
            wide: body.wide
            booth: body.models.booth
            facts: body.models.boothFacts
            reading: body.models.boothReading
            gunWords: body.models.beforeGun.carWords
            onGunAsked: gunTurns.showGun("", Navigation.None)
            onNowAsked: booth => boothTurns.showBooth(booth)
            protection: body.models.protection
            onProtectionAsked: body.way.go(Navigation.Register)
            onLimitsAsked: body.way.go(Navigation.Limits)
            onExposureAsked: body.way.go(Navigation.Exposure)
            onWhoAsked: body.whoAsked()
        }
    }
    BoothTurns {
        id: boothTurns
        anchors.fill: parent
        models: body.models; way: body.way; work: body.shown; wide: body.wide; undoRoom: body.undoRoom
        onWhoAsked: body.whoAsked()
    }
    GunTurns {
        id: gunTurns
        anchors.fill: parent
        models: body.models; way: body.way; work: body.shown; wide: body.wide; undoRoom: body.undoRoom
        onWhoAsked: body.whoAsked()
        onProductsAsked: body.productsAsked()
        onStarted: booth => boothTurns.showBooth(booth)
        onLabelAsked: key => pictureTurns.takeShot("before the gun", key, Navigation.Sprayed)
    }
    Turn {
        id: openCarTurn
        shown: body.shown === Navigation.OpenCar
        anchors.fill: parent

        sourceComponent: OpenCar {
            focus: true
            undoRoom: body.undoRoom
            objectName: "openCarScreen"
            wide: body.wide
            form: body.models.openCarForm
            onOpened: jobId => body.showCar(jobId)
            onDropped: body.way.back()
        }
    }
    Turn {
        id: carTurn
        shown: body.shown === Navigation.Car
        x: body.carBeside ? body.listWidth + 1 : 0
        width: parent.width - x
        height: parent.height

        sourceComponent: Car {
            focus: true
            undoRoom: body.undoRoom
            objectName: "carScreen"
            wide: width >= 840
            car: body.models.car
            evidence: body.models.evidence
            booth: body.models.booth
            shots: body.models.shots
            sprayed: body.models.sprayed
            cure: body.models.cure
            visitRows: body.models.visitRows
            ready: body.models.ready
            hours: body.models.carHours
            wait: body.models.wait
            onHoursAsked: body.way.go(Navigation.CarHours)
            showsHeld: body.way.work !== Navigation.Car
            onCureAsked: body.way.go(Navigation.Cure)
            onBeforeGunAsked: gunTurns.showGun("", Navigation.Car)
            onSprayedAsked: gunTurns.showSprayed("", Navigation.Car)
            onShotsAsked: body.way.go(Navigation.Shots)
            onShotAsked: stage => pictureTurns.takeMissing(stage, Navigation.Car)
            onEvidenceAsked: body.way.go(Navigation.Evidence)
            onInspectAsked: body.way.go(Navigation.Inspect)
            onPartsAsked: body.way.go(Navigation.Parts)
            work: body.models.operations
            orders: body.models.orders
            assembly: body.models.assembly
            fit: body.models.fit
            onWorkAsked: place => correctTurns.assembly.show(place)
            onPlanAsked: body.way.go(Navigation.Plan)
            onWhoAsked: body.whoAsked()
            onTimeLineAsked: body.way.go(Navigation.TimeLine)
        }
    }
    Turn {
        id: inspectTurn
        shown: body.shown === Navigation.Inspect
        anchors.fill: parent

        sourceComponent: InspectCar {
            focus: true
            undoRoom: body.undoRoom
            objectName: "inspectScreen"
            wide: body.wide
            inspect: body.models.inspect
            evidence: body.models.evidence
            onEvidenceAsked: body.way.go(Navigation.Evidence)
            onCarAsked: body.way.go(Navigation.Car)
            onPlanAsked: body.way.go(Navigation.Plan)
            onPanelAsked: panel => {
                body.models.inspect.openPanel(panel);
                body.way.go(Navigation.Panel);
            }
        }
    }
    Turn {
        id: panelTurn
        shown: body.shown === Navigation.Panel
        anchors.fill: parent

        sourceComponent: InspectPanel {
            focus: true
            undoRoom: body.undoRoom
            objectName: "panelScreen"
            wide: body.wide
            inspect: body.models.inspect
            look: body.models.look
            onPictureAsked: (picture, among) => body.showPicture(picture, among, Navigation.Panel)
            onPhotoAsked: mark => pictureTurns.takeOfMark(mark, Navigation.Panel)
            onNextAsked: panel => {
                body.models.inspect.openPanel(panel);
                if (panel === "")
                    body.way.go(Navigation.Inspect);
            }
            onFilmAsked: body.showFilm(body.models.inspect.panel, Navigation.Panel)
        }
    }
    CorrectTurns {
        id: correctTurns
        anchors.fill: parent
        models: body.models; way: body.way; work: body.shown; wide: body.wide; undoRoom: body.undoRoom
        onWhoAsked: body.whoAsked()
        onBeforeCutAsked: body.beforeCutAsked()
        onFilmAsked: panel => body.showFilm(panel, Navigation.Plan)
        onSprayedAsked: gunTurns.showSprayed("", Navigation.Cure)
        onProductsAsked: body.productsAsked()
        onPhotoAsked: (stage, from) => pictureTurns.takeShot(stage, "", from)
        onShotAsked: (stage, key) => pictureTurns.takeShot(stage, key, Navigation.Fit)
    }
    Turn {
        id: evidenceTurn
        shown: body.shown === Navigation.Evidence
        anchors.fill: parent

        sourceComponent: Evidence {
            focus: true
            undoRoom: body.undoRoom
            objectName: "evidenceScreen"
            wide: body.wide
            evidence: body.models.evidence
            inspect: body.models.inspect
            booth: body.models.booth
            onCarAsked: body.way.go(Navigation.Car)
            onWhoAsked: body.whoAsked()
        }
    }
    CarRecordTurns {
        id: carRecordTurns
        anchors.fill: parent
        models: body.models; way: body.way; work: body.shown; wide: body.wide; undoRoom: body.undoRoom
        onPictureAsked: (picture, from) => body.showPicture(picture, [], from)
        onWhoAsked: body.whoAsked()
    }
    QuestionTurns {
        id: questionTurns
        anchors.fill: parent
        models: body.models; way: body.way; work: body.shown; wide: body.wide; undoRoom: body.undoRoom
        onCarAsked: jobId => body.showCar(jobId)
    }
    HoursTurns {
        id: hoursTurns
        anchors.fill: parent
        models: body.models; work: body.shown; wide: body.wide; undoRoom: body.undoRoom
        onWhoAsked: body.whoAsked()
        onForgetAsked: personId => body.forgetAsked(personId)
    }
    SyncTurns {
        id: syncTurns
        anchors.fill: parent
        models: body.models; way: body.way; work: body.shown; wide: body.wide; undoRoom: body.undoRoom
        onJoinAsked: body.joinAsked()
        onExportAsked: body.exportAsked()
    }
    HandOverTurns {
        id: handOverTurns
        anchors.fill: parent
        models: body.models; way: body.way; work: body.shown; wide: body.wide; undoRoom: body.undoRoom
        onWhoAsked: body.whoAsked()
    }
    PictureTurns {
        id: pictureTurns
        anchors.fill: parent
        models: body.models; way: body.way; work: body.shown; wide: body.wide; undoRoom: body.undoRoom
        onPictureAsked: (picture, among) => body.showPicture(picture, among, Navigation.Wall)
    }
}
