// Main: the window: margin line, head, banner, body, undo row, clock rule, places; and the sheets.
// All view models are made by the program and handed in.
// Keys: 1 Floor, 2 Booth, 3 Record, C clock, F1 First aid, Ctrl+Z undo, Esc one step back.
import QtQuick
import QtQuick.Window
import Jambline.Theme
import Jambline.Screens
import Jambline.Job

Window {
    id: window

    required property Session session
    required property SettingsViewModel settings
    required property ShellViewModel shell
    required property FloorViewModel floor
    required property ClockViewModel clock
    required property PinViewModel pin
    required property ForgottenClockViewModel forgotten
    required property ShopViewModel shop
    required property ShopFolderViewModel shopFolder
    required property DemoViewModel demo
    required property OpenCarViewModel openCarForm
    required property CarViewModel car
    required property InspectViewModel inspect
    required property EvidenceViewModel evidence
    required property BoothViewModel booth
    required property BoothFactsViewModel boothFacts
    required property BoothReadingViewModel boothReading
    required property ClearanceViewModel clearance
    required property CountdownViewModel countdown
    required property RegisterViewModel protection
    required property LimitsViewModel limits
    required property ExposureViewModel exposure
    required property FirstAidViewModel aid
    required property PartsViewModel parts
    required property FilmViewModel film
    required property BeforeCutViewModel beforeCut
    required property PlanViewModel plan
    required property WalkViewModel walk
    required property CureViewModel cure
    required property BondViewModel bond
    required property ProductViewModel products
    required property BeforeGunViewModel beforeGun
    required property SprayedViewModel sprayed
    required property RecordViewModel record
    required property DirtOverTimeViewModel dirt
    required property TimeLineViewModel timeLine
    required property WallViewModel wall
    required property ShotListViewModel shotList
    required property ShotsViewModel shots
    required property ShotViewModel shot
    required property LookViewModel look
    required property CompareViewModel compare
    required property LeftoversViewModel leftovers
    readonly property alias way: way
    readonly property alias clockSheet: clockSheet
    readonly property alias peopleSheet: peopleSheet
    readonly property alias pinSheet: pinSheet
    readonly property alias shopSheet: shopSheet
    readonly property alias forgottenSheet: forgottenSheet
    readonly property alias beforeCutSheet: beforeCutSheet
    readonly property bool asksOverSheets: pinSheet.opened || forgottenSheet.opened
    readonly property alias firstAid: firstAid
    readonly property bool wide: width >= 840

    function undo() {
        if (shell.undoShown && shell.undoPossible)
            shell.undo();
    }

    visible: true
    width: 412
    height: 892
    minimumWidth: 360
    minimumHeight: 600
    title: demo.isDemo ? qsTr("Demo shop, Jambline") : session.hasCar && way.inCar ? qsTr("%1, Jambline").arg(session.carTitle) : qsTr("Jambline")
    color: Theme.paper

    Binding { target: Theme; property: "dark"; value: window.settings.dark }
    Binding { target: Theme; property: "textScale"; value: window.settings.textPercent / 100 }
    Binding { target: Theme; property: "desk"; value: window.width >= 1200 }

    ViewModels {
        id: models
        session: window.session
        floor: window.floor
        demo: window.demo
        openCarForm: window.openCarForm
        car: window.car
        inspect: window.inspect
        evidence: window.evidence
        booth: window.booth
        boothFacts: window.boothFacts
        boothReading: window.boothReading
        clearance: window.clearance
        protection: window.protection
        limits: window.limits
        exposure: window.exposure
        film: window.film
        parts: window.parts
        plan: window.plan
        walk: window.walk
        cure: window.cure
        bond: window.bond
        beforeGun: window.beforeGun
        sprayed: window.sprayed
        record: window.record
        dirt: window.dirt
        timeLine: window.timeLine
        wall: window.wall
        shots: window.shots
        shot: window.shot
        look: window.look
        compare: window.compare
        leftovers: window.leftovers
    }
    Navigation {
        id: way
        onArrived: body.forceActiveFocus()
    }

    Follow {
        item: window.activeFocusItem
    }

    FocusScope {
        id: frame
        anchors.fill: parent
        enabled: !firstAid.opened
        focus: true

        Keys.onPressed: event => {
            event.accepted = true;
            if (event.key === Qt.Key_F1)
                firstAid.open();
            else if (event.key === Qt.Key_Z && event.modifiers & Qt.ControlModifier)
                window.undo();
            else if (event.key === Qt.Key_Escape || event.key === Qt.Key_Back)
                event.accepted = way.back();
            else if (event.modifiers & ~Qt.KeypadModifier)
                event.accepted = false;
            else if (event.key === Qt.Key_1)
                way.toPlace(Navigation.Floor);
            else if (event.key === Qt.Key_2)
                way.toPlace(Navigation.Booth);
            else if (event.key === Qt.Key_3)
                way.toPlace(Navigation.Record);
            else if (event.key === Qt.Key_C)
                clockSheet.opened = true;
            else
                event.accepted = false;
        }

        // Large words under a banner: the screen keeps a height that it can work in, and scrolls.
        Flickable {
            id: sight
            width: parent.width
            height: rule.y
            contentWidth: width
            contentHeight: body.y + body.height + (body.ofPanel ? foot.height + 12 : 0)
            interactive: contentHeight > height + 1
            clip: interactive
            boundsBehavior: Flickable.StopAtBounds

            MarginLine {
                id: margin
                width: parent.width
                height: implicitHeight
                syncText: window.demo.isDemo ? qsTr("Demo shop, thrown away when closed") : window.shell.syncWords
                countdownText: window.countdown.marginWords
                urgent: window.countdown.urgent
                wallText: window.shell.wallWords
            }
            Head {
                id: head
                y: margin.height
                width: parent.width
                height: implicitHeight
                session: window.session
                way: way
                wide: window.wide
                countWords: window.floor.countWords
                boothTitle: window.clearance.title
                boothNote: window.clearance.note
                doNotDrive: window.cure.doNotDrive
                keysWords: window.cure.keysWords
                onBackAsked: way.work < Navigation.Car ? way.back() : way.go(Navigation.Car)
                onPersonAsked: peopleSheet.opened = true
                onAidAsked: firstAid.open()
            }
            NoteBanner {
                id: banner
                objectName: "banner"
                visible: window.shell.bannerShown
                x: Theme.gutter
                y: head.y + head.height + 4
                width: parent.width - 2 * Theme.gutter
                height: visible ? implicitHeight : 0
                kind: window.shell.bannerToKnow ? NoteBanner.Due : NoteBanner.NotSaved
                happened: window.shell.bannerWhat
                stands: Array.from([window.shell.bannerKept, window.shell.bannerTodo]).filter(words => words !== "").join("\n")
                actText: window.shell.bannerStands ? "" : qsTr("Close")
                details: window.shell.bannerDetails
                onActed: window.shell.closeBanner()
            }
            Body {
                id: body
                z: 1

                // Looking over a panel on a phone, the row's room below the main act is never given away.
                readonly property bool ofPanel: way.work === Navigation.Panel && !window.wide

                focus: true
                y: banner.visible ? banner.y + banner.height + 8 : head.y + head.height + 4
                width: parent.width
                height: Math.max(leastHeight, rule.y - y - (ofPanel ? foot.height + 12 : 0))
                onWhoAsked: peopleSheet.opened = true
                onBeforeCutAsked: window.beforeCut.ask()
                onProductsAsked: shopSheet.showProducts()
                undoRoom: foot.room
                models: models
                way: way
            }
            FootRow {
                id: foot
                shell: window.shell
                countdown: window.countdown
                away: body.frontScreen?.undoAway ?? false
                noUndo: body.frontScreen?.noUndo ?? false
                atBooth: way.work === Navigation.BoothNow ? window.clearance.booth : ""
                x: body.front.x + (body.frontScreen?.actsX ?? Theme.gutter)
                width: body.frontScreen?.actsWidth ?? body.front.width - 2 * Theme.gutter
                y: body.ofPanel ? Math.max(body.y + body.leastHeight + 4, rule.y - height - 8) : body.y + body.actsTop - height - 8
                onUndone: window.undo()
                onBoothAsked: booth => body.boothTurns.showBooth(booth)
            }
        }
        SteelRule {
            id: rule
            objectName: "clockRule"
            width: parent.width
            height: implicitHeight
            y: places.y - height
            operation: window.clock.operation
            who: window.wide && window.clock.others !== ""
                ? qsTr("%1 · %2").arg(window.clock.who).arg(window.clock.others) : window.clock.who
            seconds: window.clock.seconds
            used_h: window.clock.usedHours
            allotted_h: window.clock.allottedHours
            doubtful: window.clock.doubtful
            mode: window.clock.running ? SteelRule.Running : window.clock.paused ? SteelRule.Paused : SteelRule.None
            tabText: window.clock.tabWords
            tabLead: window.clock.running ? qsTr("switch to") : qsTr("start")
            name: qsTr("Clock, %1, %2. Opens the clock.").arg(operation).arg(who)
            onClicked: clockSheet.opened = true
            onSwitched: window.clock.startNext()
        }
        Places {
            id: places
            width: parent.width
            height: implicitHeight
            y: parent.height - height
            way: way
            onChosen: place => {
                const here = way.place === place && way.work === Navigation.None;
                way.toPlace(place);
                if (here)
                    body.toTop();
            }
        }
    }

    ClockSheet {
        id: clockSheet
        anchors.fill: parent
        enabled: !firstAid.opened && !window.asksOverSheets
        clock: window.clock
        session: window.session
        keepClear: head.firstAid
    }
    PeopleSheet {
        id: peopleSheet
        anchors.fill: parent
        pin: window.pin
        demo: window.demo
        onPinWanted: pinSheet.setOne()
        onShopWanted: {
            close();
            shopSheet.showShop();
        }
        enabled: !firstAid.opened && !window.asksOverSheets && !shopSheet.opened
        clock: window.clock
        settings: window.settings
        keepClear: head.firstAid
    }
    ShopSheet {
        id: shopSheet
        z: 52
        anchors.fill: parent
        enabled: !firstAid.opened && !window.asksOverSheets
        shop: window.shop
        folder: window.shopFolder
        shots: window.shotList
        products: window.products
        keepClear: head.firstAid
    }
    BeforeCut {
        id: beforeCutSheet
        anchors.fill: parent
        enabled: !firstAid.opened && !window.asksOverSheets
        check: window.beforeCut
        onAnswered: {
            if (way.work === Navigation.Plan)
                window.plan.begin();
        }
        keepClear: head.firstAid
    }
    ForgottenClockSheet {
        id: forgottenSheet
        anchors.fill: parent
        enabled: !firstAid.opened && !pinSheet.opened
        forgotten: window.forgotten
        keepClear: head.firstAid
    }
    PinSheet {
        id: pinSheet
        anchors.fill: parent
        enabled: !firstAid.opened
        pin: window.pin
        keepClear: head.firstAid
    }
    FirstAid {
        id: firstAid
        anchors.fill: parent
        log: window.aid
        onClosed: body.forceActiveFocus()
    }
}
