// Main: the window: margin line, head, banner, body, undo row, clock rule, places; and the sheets.
// All view models are made by the program and handed in, in one piece.
// Keys: 1 Floor, 2 Booth, 3 Record, C clock, F1 First aid, Ctrl+Z undo, Esc one step back.
import QtQuick
import QtQuick.Window
import Jambline.Theme

Window {
    id: window

    required property ViewModels models
    readonly property alias way: way
    property bool seen: false  // a frame with the floor was drawn
    readonly property bool wide: width >= 840

    function sheets(): var {
        return over.made();
    }

    function undo() {
        if (models.shell.undoShown && models.shell.undoPossible)
            models.shell.undo();
    }

    visible: true
    width: 412
    height: 892
    minimumWidth: 360
    minimumHeight: 600
    title: models.demo.isDemo ? qsTr("Demo shop, Jambline") : models.session.hasCar && way.inCar ? qsTr("%1, Jambline").arg(models.session.carTitle) : qsTr("Jambline")
    color: Theme.paper

    Binding { target: Theme; property: "dark"; value: window.models.settings.dark }
    Binding { target: Theme; property: "textScale"; value: window.models.settings.textPercent / 100 }
    Binding { target: Theme; property: "desk"; value: window.width >= 1200 }

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
        enabled: !(over.item?.firstAid.opened ?? false)
        focus: true

        Keys.onPressed: event => {
            event.accepted = true;
            if (event.key === Qt.Key_F1)
                window.sheets().firstAid.open();
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
                window.sheets().clockSheet.opened = true;
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
                onPressed: way.go(Navigation.Sending)
                syncText: window.models.demo.isDemo ? qsTr("Demo shop, thrown away when closed") : window.models.shell.syncWords
                countdownText: window.models.countdown.marginWords
                urgent: window.models.countdown.urgent
                wallText: window.models.shell.wallWords
            }
            Head {
                id: head
                y: margin.height
                width: parent.width
                height: implicitHeight
                session: window.models.session
                way: way
                wide: window.wide
                countWords: window.models.floor.countWords
                questionTitle: window.models.question.title
                questionNote: window.models.question.timeTitle
                boothTitle: window.models.clearance.title
                boothNote: window.models.clearance.note
                doNotDrive: window.models.cure.doNotDrive
                keysWords: window.models.cure.keysWords
                onBackAsked: way.work < Navigation.Car ? way.back() : way.go(Navigation.Car)
                onPersonAsked: window.sheets().peopleSheet.opened = true
                onAidAsked: window.sheets().firstAid.open()
            }
            NoteBanner {
                id: banner
                objectName: "banner"
                visible: window.models.shell.bannerShown
                x: Theme.gutter
                y: head.y + head.height + 4
                width: parent.width - 2 * Theme.gutter
                height: visible ? implicitHeight : 0
                kind: window.models.shell.bannerToKnow ? NoteBanner.Due : NoteBanner.NotSaved
                happened: window.models.shell.bannerWhat
                stands: Array.from([window.models.shell.bannerKept, window.models.shell.bannerTodo]).filter(words => words !== "").join("\n")
                actText: window.models.shell.bannerStands ? "" : qsTr("Close")
                details: window.models.shell.bannerDetails
                onActed: window.models.shell.closeBanner()
            }
            Body {
                id: body
                z: 1

                // Looking over a panel on a phone, the row's room below the main act is never given away.
                readonly property bool ofPanel: way.work === Navigation.Panel && !window.wide

                focus: true
                seen: window.seen
                y: banner.visible ? banner.y + banner.height + 8 : head.y + head.height + 4
                width: parent.width
                height: Math.max(leastHeight, rule.y - y - (ofPanel ? foot.height + 12 : 0))
                onWhoAsked: window.sheets().peopleSheet.opened = true
                onBeforeCutAsked: window.models.beforeCut.ask()
                onProductsAsked: window.sheets().shopSheet.showProducts()
                onJoinAsked: window.sheets().joinSheet.show()
                onExportAsked: window.sheets().shopSheet.showShop()
                onForgetAsked: personId => window.sheets().shopSheet.showPerson(personId)
                undoRoom: foot.room
                models: window.models
                way: way
            }
            FootRow {
                id: foot
                shell: window.models.shell
                countdown: window.models.countdown
                away: body.frontScreen?.undoAway ?? false
                noUndo: body.frontScreen?.noUndo ?? false
                atBooth: way.work === Navigation.BoothNow ? window.models.clearance.booth : ""
                x: body.front.x + (body.frontScreen?.actsX ?? Theme.gutter)
                width: body.frontScreen?.actsWidth ?? body.front.width - 2 * Theme.gutter
                y: body.ofPanel ? Math.max(body.y + body.leastHeight + 4, rule.y - height - 8) : body.y + body.actsTop - height - 8
                onUndone: window.undo()
                onBoothAsked: booth => body.showBooth(booth)
            }
        }
        SteelRule {
            id: rule
            objectName: "clockRule"
            width: parent.width
            height: implicitHeight
            y: places.y - height
            operation: window.models.clock.operation
            who: window.wide && window.models.clock.others !== ""
                ? qsTr("%1 · %2").arg(window.models.clock.who).arg(window.models.clock.others) : window.models.clock.who
            seconds: window.models.clock.seconds
            used_h: window.models.clock.usedHours
            allotted_h: window.models.clock.allottedHours
            doubtful: window.models.clock.doubtful
            mode: window.models.clock.running ? SteelRule.Running : window.models.clock.paused ? SteelRule.Paused : SteelRule.None
            tabText: window.models.clock.tabWords
            tabLead: window.models.clock.running ? qsTr("switch to") : qsTr("start")
            name: qsTr("Clock, %1, %2. Opens the clock.").arg(operation).arg(who)
            onClicked: window.sheets().clockSheet.opened = true
            onSwitched: window.models.clock.startNext()
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

    Later {
        id: over
        anchors.fill: parent
        z: 50
        file: "Sheets.qml"
        given: ({ models: window.models, way: way, keepClear: head.firstAid })
        begins: window.seen
        needed: !body.floorAlone
    }
    Connections {
        target: over.item
        function onClosed() { body.forceActiveFocus(); }
    }
    Connections {
        target: window
        enabled: !window.seen
        function onFrameSwapped() { window.seen = true; }
    }
}
