// Clearance: how long a booth's air is left to clear, in digits that are read from three meters, what
// that rests on, and what starts it again. clearance: the view model. On a desk the number stands left,
// what is said of it and the acts right.
// Signals: whoAsked; smokeTestAsked, factsAsked where there is no time to go by; finished.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property ClearanceViewModel clearance
    property bool wide: false
    property real undoRoom: 0
    readonly property int state_: clearance.state
    readonly property bool counts: state_ === ClearanceViewModel.Counting
    readonly property bool stands: state_ === ClearanceViewModel.NotCounting
    readonly property bool over: state_ === ClearanceViewModel.TimeOver
    readonly property bool nothing: state_ === ClearanceViewModel.Nothing
    // With large words the acts scroll, and the digits keep their room.
    readonly property bool pinned: paned || Theme.textScale <= 1.2
    readonly property real actsTop: acts.visible ? acts.y : main.y
    readonly property real actsX: main.x
    readonly property real actsWidth: main.width
    readonly property bool paned: width >= 1100
    readonly property real paneWidth: paned ? 408 : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth

    implicitHeight: main.height + (acts.visible ? acts.height + Theme.gap : 0) + (paned ? 360 : 300)

    signal whoAsked
    signal smokeTestAsked
    signal factsAsked
    signal finished

    Cautions {
        id: cautions
    }
    Flickable {
        id: view
        width: page.paned ? page.paneX - Theme.gutter : parent.width
        height: (page.paned ? parent.height : page.actsTop - page.undoRoom) - Theme.gap
        contentHeight: figure.height + (page.paned ? 0 : rest.height + Theme.gutter)
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        ClearanceFigure {
            id: figure
            width: parent.width
            clearance: page.clearance
            digitsSize: page.paned ? 200 : page.wide ? 240 : Theme.far
            onSumAsked: page.clearance.openSum()
        }
        Item {
            id: below
            x: Theme.gutter
            y: figure.height + Theme.gap
            width: parent.width - 2 * Theme.gutter
            height: rest.height
            visible: !page.paned
        }
    }
    Flickable {
        visible: page.paned
        x: page.paneX
        width: page.paneWidth
        height: page.actsTop - Theme.gap - page.undoRoom
        contentHeight: besides.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Item {
            id: besides
            width: parent.width
            height: rest.height + Theme.gap
        }
    }
    Column {
        id: rest
        parent: page.paned ? besides : below
        width: parent.width
        topPadding: Theme.gap
        spacing: Theme.gutter

        ExhaustActs {
            width: parent.width
            used: !page.pinned
            clearance: page.clearance
            onWhoAsked: page.whoAsked()
            onSmokeTestAsked: page.smokeTestAsked()
            onFactsAsked: page.factsAsked()
        }
        Words {
            width: parent.width
            visible: page.nothing
            text: qsTr("Nothing stands in this booth. The time begins with gun down.")
            color: Theme.pencil
        }
        Words {
            width: parent.width
            visible: !page.nothing
            text: cautions.deviceOutside
        }
        Words {
            objectName: "clearanceSound"
            width: parent.width
            visible: page.counts || page.stands
            text: page.clearance.soundWords
            color: Theme.pencil
        }
        Words {
            width: parent.width
            visible: page.counts || page.stands
            text: cautions.countsOnly
            color: Theme.pencil
        }
        WasteCard {
            width: parent.width
            visible: page.clearance.wasteShown
            onSeen: page.clearance.wasteSeen()
        }
    }
    ExhaustActs {
        id: acts
        x: page.paneX
        y: main.y - height - Theme.gap
        width: page.paneWidth
        used: page.pinned
        clearance: page.clearance
        onWhoAsked: page.whoAsked()
        onSmokeTestAsked: page.smokeTestAsked()
        onFactsAsked: page.factsAsked()
    }
    SlabButton {
        id: main
        objectName: "logClearance"
        x: page.paneX
        y: parent.height - height - Theme.gap
        width: page.paneWidth
        height: implicitHeight
        text: page.nothing ? qsTr("Back to the booths") : qsTr("Log: clearance over")
        secondLine: page.nothing ? "" : page.clearance.mainSecond
        waits: !page.nothing && (!page.over || !page.clearance.mayAct)
        onRefused: {
            if (!page.clearance.mayAct)
                page.whoAsked();
        }
        onClicked: page.nothing ? page.finished() : page.clearance.logOver()
    }
}
