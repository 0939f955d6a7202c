// Sheets: what comes over the screens: clock, wait, people, the shop, joining a hub, the questions before
// cutting, a forgotten clock, a PIN, and First aid over everything. keepClear: stays uncovered and usable
// beside them. Made by the window after the first frame, or when one of them is wanted before.
// Signal: closed, First aid was.
import QtQuick
import Jambline.Job

Item {
    id: sheets

    required property ViewModels models
    required property Navigation way
    required property Item keepClear
    readonly property alias clockSheet: clockSheet
    readonly property alias peopleSheet: peopleSheet
    readonly property alias shopSheet: shopSheet
    readonly property alias joinSheet: joinSheet
    readonly property alias beforeCutSheet: beforeCutSheet
    readonly property alias firstAid: firstAid
    readonly property bool asksOverSheets: pinSheet.opened || forgottenSheet.opened

    signal closed

    anchors.fill: parent

    ClockSheet {
        id: clockSheet
        anchors.fill: parent
        enabled: !firstAid.opened && !sheets.asksOverSheets
        clock: sheets.models.clock
        session: sheets.models.session
        keepClear: sheets.keepClear
        onHoursAsked: {
            close();
            sheets.models.hours.showOwn();
            sheets.way.go(Navigation.Hours);
        }
        onWaitAsked: {
            close();
            sheets.models.wait.ask();
        }
        onOtherCarAsked: {
            close();
            sheets.way.toPlace(Navigation.Floor);
        }
    }
    WaitSheet {
        id: waitSheet
        objectName: "waitSheet"
        anchors.fill: parent
        enabled: !firstAid.opened && !sheets.asksOverSheets && !peopleSheet.opened
        wait: sheets.models.wait
        keepClear: sheets.keepClear
        onWhoAsked: peopleSheet.opened = true
    }
    PeopleSheet {
        id: peopleSheet
        anchors.fill: parent
        pin: sheets.models.pin
        demo: sheets.models.demo
        onPinWanted: pinSheet.setOne()
        onShopWanted: {
            close();
            shopSheet.showShop();
        }
        onSendingWanted: {
            close();
            sheets.way.go(Navigation.Sending);
        }
        onKeepWanted: {
            close();
            sheets.way.go(Navigation.KeepAndForget);
        }
        syncWords: sheets.models.shell.syncWords
        enabled: !firstAid.opened && !sheets.asksOverSheets && !shopSheet.opened
        clock: sheets.models.clock
        settings: sheets.models.settings
        keepClear: sheets.keepClear
    }
    ShopSheet {
        id: shopSheet
        z: 52
        anchors.fill: parent
        enabled: !firstAid.opened && !sheets.asksOverSheets
        shop: sheets.models.shop
        folder: sheets.models.shopFolder
        shots: sheets.models.shotList
        products: sheets.models.products
        calendar: sheets.models.calendar
        retention: sheets.models.retention
        keepClear: sheets.keepClear
    }
    JoinSheet {
        id: joinSheet
        z: 52
        anchors.fill: parent
        enabled: !firstAid.opened && !sheets.asksOverSheets
        join: sheets.models.join
        keepClear: sheets.keepClear
    }
    BeforeCut {
        id: beforeCutSheet
        anchors.fill: parent
        enabled: !firstAid.opened && !sheets.asksOverSheets
        check: sheets.models.beforeCut
        onAnswered: {
            if (sheets.way.work === Navigation.Plan)
                sheets.models.plan.begin();
        }
        keepClear: sheets.keepClear
    }
    ForgottenClockSheet {
        id: forgottenSheet
        anchors.fill: parent
        enabled: !firstAid.opened && !pinSheet.opened
        forgotten: sheets.models.forgotten
        keepClear: sheets.keepClear
    }
    PinSheet {
        id: pinSheet
        anchors.fill: parent
        enabled: !firstAid.opened
        pin: sheets.models.pin
        keepClear: sheets.keepClear
    }
    FirstAid {
        id: firstAid
        anchors.fill: parent
        log: sheets.models.aid
        onClosed: sheets.closed()
    }
}
