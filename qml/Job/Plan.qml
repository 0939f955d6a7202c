// Plan: the correction before it begins: the rounds in order with what each needs, the areas to
// scale, film words, what is left out and why, where the minutes come from. plan: the view model;
// inspect: draws the car. wide: the map left, the rounds and the main act right.
// Signals: walkAsked, beforeCutAsked, filmAsked(panel), whoAsked, lookAsked (over the car), cureAsked.
// Keys: Enter the main act, B by rounds or by panels.
pragma ComponentBehavior: Bound
import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property PlanViewModel plan
    required property InspectViewModel inspect
    property bool wide: false
    property real undoRoom: 0  // kept free above the main act
    readonly property real actsTop: main.visible ? main.y : height
    readonly property real actsX: main.x
    readonly property real actsWidth: main.width
    readonly property bool beside: wide && width >= 720
    readonly property real paneWidth: beside ? 420 : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth
    readonly property real mainRoom: main.visible ? main.height + 2 * Theme.gap + undoRoom : Theme.gap
    property string asked: ""  // the kind whose start is chosen

    signal walkAsked
    signal beforeCutAsked
    signal filmAsked(string panel)
    signal whoAsked
    signal lookAsked
    signal cureAsked

    Component.onCompleted: plan.opened()
    Accessible.role: Accessible.Pane
    Accessible.name: plan.title
    Keys.onPressed: event => {
        event.accepted = !(event.modifiers & (Qt.ControlModifier | Qt.AltModifier | Qt.MetaModifier));
        if (event.accepted && (event.key === Qt.Key_Return || event.key === Qt.Key_Enter))
            main.press();
        else if (event.accepted && event.key === Qt.Key_B)
            page.plan.goByPanel(!page.plan.byPanel);
        else
            event.accepted = false;
    }

    Connections {
        target: page.plan
        function onWalkAsked() {
            page.walkAsked();
        }
        function onSandAsked() {
            sand.opened = true;
        }
        function onEarlyAsked() {
            early.opened = true;
        }
        function onBeforeCutAsked() {
            page.beforeCutAsked();
        }
        function onWhoAsked() {
            page.whoAsked();
        }
    }

    Flickable {
        id: view
        width: page.beside ? page.paneX : parent.width
        height: page.beside ? parent.height : parent.height - page.mainRoom
        contentHeight: body.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: body
            x: Theme.gutter
            width: view.width - 2 * Theme.gutter
            bottomPadding: Theme.gap
            spacing: Theme.gap

            Flow {
                width: parent.width
                spacing: 12

                Words {
                    width: Math.min(natural, parent.width)
                    text: page.plan.title
                    bold: true
                    size: Theme.screen
                    Accessible.role: Accessible.Heading
                }
                Words {
                    width: Math.min(natural, parent.width)
                    visible: text !== ""
                    text: page.plan.total
                    size: Theme.lead
                    color: Theme.pencil
                }
            }
            PaperCard {
                width: parent.width
                visible: !page.plan.here && page.plan.emptyWords !== ""
                dashed: true

                Item {
                    width: parent.width
                    height: Math.max(why.height, 64)

                    Hatch {
                        width: 56
                        height: 56
                        anchors.verticalCenter: parent.verticalCenter
                    }
                    Words {
                        id: why
                        x: 70
                        width: parent.width - x
                        anchors.verticalCenter: parent.verticalCenter
                        text: page.plan.emptyWords
                        color: Theme.pencil
                    }
                }
            }
            PlainButton {
                objectName: "planLook"
                width: parent.width
                visible: !page.plan.here && page.plan.mainText === ""
                pressable: visible
                text: qsTr("Look over the car")
                onClicked: page.lookAsked()
            }
            NoteBanner {
                width: parent.width
                visible: page.plan.refusal !== "" && !sand.opened && !early.opened
                kind: NoteBanner.Due
                happened: page.plan.refusal
                stands: page.plan.sandWords
                actText: page.plan.byClock ? qsTr("Say why it goes on now") : qsTr("Say another time")
                onActed: (page.plan.byClock ? early : sand).opened = true
            }
            AreaMap {
                id: map
                width: parent.width
                height: visible ? (page.beside ? Math.max(260, page.height * 0.5) : 230) : 0
                visible: page.plan.mapWords !== ""
                inspect: page.inspect
                areas: page.plan.areas
                still: true
                inset: 4
                words: page.plan.mapWords
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: page.plan.mapWords
                size: Theme.note
                color: Theme.pencil
            }
            Item {
                id: below
                visible: !page.beside
                width: parent.width
                height: rounds.height
            }
            PlanFacts {
                width: parent.width
                plan: page.plan
                onFilmAsked: panel => page.filmAsked(panel)
                onStartAsked: kind => {
                    page.asked = kind;
                    starts.opened = true;
                }
            }
        }
    }
    Flickable {
        id: pane
        visible: page.beside
        x: page.paneX
        width: page.paneWidth
        height: parent.height - page.mainRoom
        contentHeight: besides.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Item {
            id: besides
            width: parent.width
            height: rounds.height + Theme.gap
        }
    }
    Column {
        id: rounds
        parent: page.beside ? besides : below
        width: parent.width
        visible: page.plan.here
        spacing: Theme.gap

        ActRow {
            width: parent.width

            PlainButton {
                objectName: "planByRounds"
                text: qsTr("By rounds")
                chosen: !page.plan.byPanel
                onClicked: page.plan.goByPanel(false)
            }
            PlainButton {
                objectName: "planByPanel"
                text: qsTr("One panel at a time")
                chosen: page.plan.byPanel
                onClicked: page.plan.goByPanel(true)
            }
        }
        Repeater {
            model: page.plan.rounds

            RoundCard {
                required property int index
                required property int state
                required property bool chosen

                width: rounds.width
                roundState: state
                shown: chosen
                onClicked: page.plan.chooseRound(index)
            }
        }
    }
    SlabButton {
        id: main
        objectName: "planMain"
        x: page.paneX
        width: page.paneWidth
        height: implicitHeight
        y: parent.height - height - Theme.gap
        visible: page.plan.mainText !== ""
        pressable: visible
        text: page.plan.mainText
        secondLine: page.plan.mainSecond
        waits: page.plan.mainWaits
        onRefused: page.whoAsked()
        onClicked: page.plan.begin()
    }
    SandSheet {
        id: sand
        objectName: "sandSheet"
        anchors.fill: parent
        plan: page.plan
        onAnswered: page.plan.begin()
    }
    EarlySheet {
        id: early
        objectName: "earlySheet"
        anchors.fill: parent
        plan: page.plan
        onCureAsked: page.cureAsked()
    }
    ChoiceSheet {
        id: starts
        anchors.fill: parent
        title: qsTr("Proved on a test spot: it starts at")
        choices: [qsTr("The usual start"), page.plan.roundWords(0), page.plan.roundWords(1), page.plan.roundWords(2),
            page.plan.roundWords(3), page.plan.roundWords(4)]
        onChose: row => page.plan.proveStart(page.asked, row - 1)
    }
}
