// Car: one car: when it is due and what holds it, its stages, and the one main act, named after what
// comes next. car, evidence, booth: view models; wide: the stages left, what is due, the chosen stage and the acts
// in a pane right. shots: then the way to its pictures. Signals: shotsAsked, shotAsked(stage): take what is
// missing there; inspectAsked, evidenceAsked, planAsked, partsAsked, timeLineAsked, beforeGunAsked, sprayedAsked; whoAsked: somebody has to say
// who he is first.
pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Jambline.Theme
import Jambline.Screens

Item {
    id: page

    required property CarViewModel car
    required property EvidenceViewModel evidence
    required property BoothViewModel booth
    property ShotsViewModel shots: null
    property CureViewModel cure: null
    property bool showsHeld: false  // nothing above says that it may not be driven
    property SprayedViewModel sprayed: null
    property VisitRowsViewModel visitRows: null
    required property ReadyViewModel ready
    property CarHoursViewModel hours: null
    property WaitViewModel wait: null
    property OperationsViewModel work: null
    property OrdersViewModel orders: null
    property AssemblyViewModel assembly: null
    property FitViewModel fit: null
    property bool wide: false
    implicitHeight: acts.height + undoRoom + 176
    property real undoRoom: 0  // kept free above the acts
    readonly property real actsTop: acts.y
    readonly property real actsX: acts.x
    readonly property real actsWidth: acts.width
    readonly property real paneWidth: wide ? 344 : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth
    // Large words: the row of other acts goes with the body, the main act stays where it is.
    readonly property bool tall: Theme.textScale > 1.2 && !wide

    signal inspectAsked
    signal evidenceAsked
    signal partsAsked
    signal planAsked
    signal timeLineAsked
    signal cureAsked
    signal shotsAsked
    signal shotAsked(string stage)
    signal whoAsked
    signal beforeGunAsked
    signal sprayedAsked
    signal hoursAsked
    signal workAsked(string place)  // "operations", "orders", "assembly", "fit"

    Connections {
        target: page.car
        function onInspectAsked() { page.inspectAsked(); }
        function onBeforeGunAsked() { page.beforeGunAsked(); }
        function onPlanAsked() { page.planAsked(); }
        function onShotsMissing() { release.opened = true; }
    }

    Flickable {
        id: view
        width: page.wide ? page.paneX : parent.width
        height: page.wide ? parent.height : acts.y - Theme.gap - page.undoRoom
        contentHeight: body.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: body
            x: Theme.gutter
            width: view.width - 2 * Theme.gutter
            topPadding: Theme.gap
            bottomPadding: Theme.gap
            spacing: Theme.gap

            Item {
                id: above
                visible: !page.wide
                width: parent.width
                height: facts.height
            }
            GridLayout {
                id: grid
                width: parent.width
                columns: page.wide ? Math.max(1, Math.min(3, Math.floor(width / (190 * Theme.textScale)))) : width < 230 * Theme.textScale ? 1 : 2
                columnSpacing: Theme.gap
                rowSpacing: Theme.gap

                Repeater {
                    id: stages
                    model: page.car.stages

                    StageTile {
                        required property int index
                        required property string key
                        required property int state

                        Layout.preferredWidth: (grid.width - (grid.columns - 1) * grid.columnSpacing) / grid.columns
                        Layout.fillHeight: true
                        stageState: state
                        place: index + 1
                        places: stages.count
                        onClicked: page.car.choose(key)
                    }
                }
            }
            PaperCard {
                width: parent.width
                visible: stages.count === 0
                dashed: true

                Words {
                    width: parent.width
                    text: qsTr("No stages yet. The first operation makes one.")
                    color: Theme.pencil
                }
            }
            Item {
                id: below
                visible: !page.wide && height > 0
                width: parent.width
                height: visit.height
            }
            Item {
                id: tail
                width: parent.width
                height: page.tall ? row.height : 0
                visible: page.tall
            }
        }
    }

    Flickable {
        id: pane
        visible: page.wide
        x: page.paneX
        width: page.paneWidth
        height: acts.y - Theme.gap - page.undoRoom
        contentHeight: beside.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: beside
            width: parent.width
            topPadding: Theme.gap
            bottomPadding: Theme.gap
            spacing: Theme.gap

            Item {
                id: besideFacts
                width: parent.width
                height: facts.height
            }
            Words {
                width: parent.width
                visible: operations.count > 0
                topPadding: Theme.gap
                text: page.car.stageTitle
                bold: true
                size: Theme.lead
                Accessible.role: Accessible.Heading
            }
            Repeater {
                id: operations
                model: page.wide ? page.car.operations : null

                OperationLine {
                    width: beside.width
                }
            }
            Item {
                id: besideVisit
                visible: page.wide && height > 0
                width: parent.width
                height: visit.height
            }
        }
    }
    CarFacts {
        id: facts
        parent: page.wide ? besideFacts : above
        width: parent.width
        car: page.car
        evidence: page.evidence
        booth: page.booth
        shots: page.shots
        cure: page.cure
        sprayed: page.sprayed
        showsHeld: page.showsHeld
        ready: page.ready
        onReadyAsked: {
            page.ready.open();
            readySum.opened = true;
        }
        onWhoAsked: page.whoAsked()
        onSprayedAsked: page.sprayedAsked()
        onCureAsked: page.cureAsked()
        onEvidenceAsked: page.evidenceAsked()
        onShotsAsked: page.shotsAsked()
        onTimeLineAsked: page.timeLineAsked()
    }
    CarVisit {
        id: visit
        parent: page.wide ? besideVisit : below
        width: parent.width
        car: page.car
        rows: page.visitRows
        hours: page.hours
        wait: page.wait
        work: page.work
        orders: page.orders
        assembly: page.assembly
        fit: page.fit
        onHoursAsked: page.hoursAsked()
        onWhoAsked: page.whoAsked()
        onWorkAsked: place => page.workAsked(place)
    }

    ActRow {
        id: row
        parent: page.tall ? tail : spot
        width: acts.width

        PlainButton {
            objectName: "carParts"
            text: qsTr("Parts")
            secondLine: page.car.partsWords
            beside: false
            onClicked: page.partsAsked()
        }
        PlainButton {
            objectName: "carTimeLine"
            text: qsTr("Time line")
            secondLine: page.car.timeLineWords
            beside: false
            onClicked: page.timeLineAsked()
        }
        PlainButton {
            objectName: "carNote"
            visible: page.car.shutWords === ""
            pressable: visible
            text: qsTr("Note")
            secondLine: qsTr("write one")
            beside: false
            onClicked: note.show()
        }
    }

    Column {
        id: acts
        x: page.paneX
        width: page.paneWidth
        y: parent.height - height - Theme.gap
        spacing: Theme.gap

        Item {
            id: spot
            width: parent.width
            height: page.tall ? 0 : row.height
            visible: !page.tall
        }
        SlabButton {
            objectName: "carMain"
            width: parent.width
            height: implicitHeight
            visible: page.car.mainAct !== CarViewModel.None
            pressable: visible
            text: page.car.mainText
            secondLine: page.car.mainSecond
            waits: page.car.mainWaits
            onRefused: page.whoAsked()
            onClicked: page.car.act()
        }
    }

    CarNoteSheet {
        id: note
        anchors.fill: parent
        car: page.car
    }
    SumSheet {
        id: readySum
        objectName: "readySum"
        anchors.fill: parent
        side: page.wide
        sum: page.ready.sum
    }
    ReleaseSheet {
        id: release
        anchors.fill: parent
        car: page.car
        canTake: page.shots !== null
        onTakeAsked: stage => page.shotAsked(stage)
    }
}
