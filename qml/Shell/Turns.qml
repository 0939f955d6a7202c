// Turns: the screens but the floor, each in its turn. The places stay alive and keep their scroll; a
// work is there only in its turn: what nobody sees costs no act anything. Made by Body after the first
// frame, or when one of them is wanted before. front: the turn that is shown, null when none is; shown:
// there is one.
// Qt 6.4 makes no Loader's component in a file with bound components: ids are unbound.
// qmllint disable unqualified
import QtQuick
import Jambline.Job
import Jambline.Booth
import Jambline.Record

FocusScope {
    id: turns

    required property Body body
    readonly property ViewModels models: body.models
    readonly property Navigation way: body.way
    readonly property bool wide: body.wide
    readonly property int work: body.shown
    readonly property real undoRoom: body.undoRoom
    readonly property alias boothTurns: boothTurns
    readonly property alias gunTurns: gunTurns
    readonly property alias syncTurns: syncTurns
    readonly property alias correctTurns: correctTurns
    readonly property var groups: [correctTurns, gunTurns, hoursTurns, handOverTurns, boothTurns, pictureTurns, syncTurns, carRecordTurns, questionTurns]
    readonly property var front: Array.from([carTurn, openCarTurn, inspectTurn, panelTurn, evidenceTurn, boothTurn]).concat(groups,
        [dirtTurn, recordTurn]).find(turn => turn.shown) ?? null
    readonly property bool shown: front !== null

    anchors.fill: parent
    focus: true

    function toTop() {
        if (way.place === Navigation.Booth)
            (boothTurn.item as Booth)?.toTop();
    }

    function showFilm(panel: string, from: int) {
        models.film.openPanel(panel);
        way.filmFrom = from;
        way.go(Navigation.Film);
    }

    function showPicture(picture: string, among: var, from: int) {
        models.look.open(picture, among);
        way.lookFrom = from;
        way.go(Navigation.Look);
    }

    Turn {
        id: recordTurn
        shown: turns.way.place === Navigation.Record && turns.way.work === Navigation.None
        stays: true
        anchors.fill: parent

        sourceComponent: Record {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "recordScreen"
            wide: turns.wide
            record: turns.models.record
            onCarAsked: jobId => turns.body.showCar(jobId)
            onHistoryAsked: entryId => carRecordTurns.showHistory(entryId)
            onEntryAsked: (jobId, entryId) => {
                turns.models.session.openCar(jobId);
                carRecordTurns.showHistory(entryId);
            }
            onDevicesAsked: syncTurns.showDevices(Navigation.None)
            ask: turns.models.question
            onQuestionAsked: key => questionTurns.show(key)
            onDirtAsked: turns.way.go(Navigation.DirtOverTime)
            onHoursAsked: turns.way.go(Navigation.Hours)
            onSendingAsked: turns.way.go(Navigation.Sending)
        }
    }
    Turn {
        id: dirtTurn
        shown: turns.work === Navigation.DirtOverTime
        anchors.fill: parent

        sourceComponent: DirtOverTime {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "dirtScreen"
            wide: turns.wide
            dirt: turns.models.dirt
            onCarAsked: jobId => turns.body.showCar(jobId)
            onFloorAsked: turns.way.toPlace(Navigation.Floor)
            onBoothsAsked: turns.way.toPlace(Navigation.Booth)
        }
    }
    Turn {
        id: boothTurn
        shown: turns.way.place === Navigation.Booth && turns.way.work === Navigation.None
        stays: true
        anchors.fill: parent

        sourceComponent: Booth {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "boothScreen"
            wide: turns.wide
            booth: turns.models.booth
            facts: turns.models.boothFacts
            reading: turns.models.boothReading
            gunWords: turns.models.beforeGun.carWords
            onGunAsked: gunTurns.showGun("", Navigation.None)
            onNowAsked: booth => boothTurns.showBooth(booth)
            protection: turns.models.protection
            onProtectionAsked: turns.way.go(Navigation.Register)
            onLimitsAsked: turns.way.go(Navigation.Limits)
            onExposureAsked: turns.way.go(Navigation.Exposure)
            onWhoAsked: turns.body.whoAsked()
        }
    }
    BoothTurns {
        id: boothTurns
        anchors.fill: parent
        models: turns.models; way: turns.way; work: turns.work; wide: turns.wide; undoRoom: turns.undoRoom
        onWhoAsked: turns.body.whoAsked()
    }
    GunTurns {
        id: gunTurns
        anchors.fill: parent
        models: turns.models; way: turns.way; work: turns.work; wide: turns.wide; undoRoom: turns.undoRoom
        onWhoAsked: turns.body.whoAsked()
        onProductsAsked: turns.body.productsAsked()
        onStarted: booth => boothTurns.showBooth(booth)
        onLabelAsked: key => pictureTurns.takeShot("before the gun", key, Navigation.Sprayed)
    }
    Turn {
        id: openCarTurn
        shown: turns.work === Navigation.OpenCar
        anchors.fill: parent

        sourceComponent: OpenCar {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "openCarScreen"
            wide: turns.wide
            form: turns.models.openCarForm
            onOpened: jobId => turns.body.showCar(jobId)
            onDropped: turns.way.back()
        }
    }
    Turn {
        id: carTurn
        shown: turns.work === Navigation.Car
        x: turns.body.carBeside ? turns.body.listWidth + 1 : 0
        width: parent.width - x
        height: parent.height

        sourceComponent: Car {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "carScreen"
            wide: width >= 840
            car: turns.models.car
            evidence: turns.models.evidence
            booth: turns.models.booth
            shots: turns.models.shots
            sprayed: turns.models.sprayed
            cure: turns.models.cure
            visitRows: turns.models.visitRows
            ready: turns.models.ready
            hours: turns.models.carHours
            wait: turns.models.wait
            onHoursAsked: turns.way.go(Navigation.CarHours)
            showsHeld: turns.way.work !== Navigation.Car
            onCureAsked: turns.way.go(Navigation.Cure)
            onBeforeGunAsked: gunTurns.showGun("", Navigation.Car)
            onSprayedAsked: gunTurns.showSprayed("", Navigation.Car)
            onShotsAsked: turns.way.go(Navigation.Shots)
            onShotAsked: stage => pictureTurns.takeMissing(stage, Navigation.Car)
            onEvidenceAsked: turns.way.go(Navigation.Evidence)
            onInspectAsked: turns.way.go(Navigation.Inspect)
            onPartsAsked: turns.way.go(Navigation.Parts)
            work: turns.models.operations
            orders: turns.models.orders
            assembly: turns.models.assembly
            fit: turns.models.fit
            onWorkAsked: place => correctTurns.assembly.show(place)
            onPlanAsked: turns.way.go(Navigation.Plan)
            onWhoAsked: turns.body.whoAsked()
            onTimeLineAsked: turns.way.go(Navigation.TimeLine)
        }
    }
    Turn {
        id: inspectTurn
        shown: turns.work === Navigation.Inspect
        anchors.fill: parent

        sourceComponent: InspectCar {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "inspectScreen"
            wide: turns.wide
            inspect: turns.models.inspect
            evidence: turns.models.evidence
            onEvidenceAsked: turns.way.go(Navigation.Evidence)
            onCarAsked: turns.way.go(Navigation.Car)
            onPlanAsked: turns.way.go(Navigation.Plan)
            onPanelAsked: panel => {
                turns.models.inspect.openPanel(panel);
                turns.way.go(Navigation.Panel);
            }
        }
    }
    Turn {
        id: panelTurn
        shown: turns.work === Navigation.Panel
        anchors.fill: parent

        sourceComponent: InspectPanel {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "panelScreen"
            wide: turns.wide
            inspect: turns.models.inspect
            look: turns.models.look
            onPictureAsked: (picture, among) => turns.showPicture(picture, among, Navigation.Panel)
            onPhotoAsked: mark => pictureTurns.takeOfMark(mark, Navigation.Panel)
            onNextAsked: panel => {
                turns.models.inspect.openPanel(panel);
                if (panel === "")
                    turns.way.go(Navigation.Inspect);
            }
            onFilmAsked: turns.showFilm(turns.models.inspect.panel, Navigation.Panel)
        }
    }
    CorrectTurns {
        id: correctTurns
        anchors.fill: parent
        models: turns.models; way: turns.way; work: turns.work; wide: turns.wide; undoRoom: turns.undoRoom
        onWhoAsked: turns.body.whoAsked()
        onBeforeCutAsked: turns.body.beforeCutAsked()
        onFilmAsked: panel => turns.showFilm(panel, Navigation.Plan)
        onSprayedAsked: gunTurns.showSprayed("", Navigation.Cure)
        onProductsAsked: turns.body.productsAsked()
        onPhotoAsked: (stage, from) => pictureTurns.takeShot(stage, "", from)
        onShotAsked: (stage, key) => pictureTurns.takeShot(stage, key, Navigation.Fit)
    }
    Turn {
        id: evidenceTurn
        shown: turns.work === Navigation.Evidence
        anchors.fill: parent

        sourceComponent: Evidence {
            focus: true
            undoRoom: turns.undoRoom
            objectName: "evidenceScreen"
            wide: turns.wide
            evidence: turns.models.evidence
            inspect: turns.models.inspect
            booth: turns.models.booth
            onCarAsked: turns.way.go(Navigation.Car)
            onWhoAsked: turns.body.whoAsked()
        }
    }
    CarRecordTurns {
        id: carRecordTurns
        anchors.fill: parent
        models: turns.models; way: turns.way; work: turns.work; wide: turns.wide; undoRoom: turns.undoRoom
        onPictureAsked: (picture, from) => turns.showPicture(picture, [], from)
        onWhoAsked: turns.body.whoAsked()
    }
    QuestionTurns {
        id: questionTurns
        anchors.fill: parent
        models: turns.models; way: turns.way; work: turns.work; wide: turns.wide; undoRoom: turns.undoRoom
        onCarAsked: jobId => turns.body.showCar(jobId)
    }
    HoursTurns {
        id: hoursTurns
        anchors.fill: parent
        models: turns.models; work: turns.work; wide: turns.wide; undoRoom: turns.undoRoom
        onWhoAsked: turns.body.whoAsked()
        onForgetAsked: personId => turns.body.forgetAsked(personId)
    }
    SyncTurns {
        id: syncTurns
        anchors.fill: parent
        models: turns.models; way: turns.way; work: turns.work; wide: turns.wide; undoRoom: turns.undoRoom
        onJoinAsked: turns.body.joinAsked()
        onExportAsked: turns.body.exportAsked()
    }
    HandOverTurns {
        id: handOverTurns
        anchors.fill: parent
        models: turns.models; way: turns.way; work: turns.work; wide: turns.wide; undoRoom: turns.undoRoom
        onWhoAsked: turns.body.whoAsked()
    }
    PictureTurns {
        id: pictureTurns
        anchors.fill: parent
        models: turns.models; way: turns.way; work: turns.work; wide: turns.wide; undoRoom: turns.undoRoom
        onPictureAsked: (picture, among) => turns.showPicture(picture, among, Navigation.Wall)
    }
}
