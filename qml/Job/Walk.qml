// Walk: the correction, one round at a time: the panel upright with the areas to scale, what to do in
// words, the marks of the round, the next round small; then the marks are asked, then the panels.
// walk: the view model; inspect: draws the panel. wide: the panel left, the rest and the acts right.
// Signals: finished (nothing is left), whoAsked, planAsked.
// Keys: Enter the main act, [ ] panels, S skip, + - 0 zoom.
pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Layouts
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property WalkViewModel walk
    required property InspectViewModel inspect
    property bool wide: false
    property real undoRoom: 0  // kept free above the acts
    readonly property real actsTop: acts.y
    readonly property real actsX: acts.x
    readonly property real actsWidth: acts.width
    readonly property bool beside: wide && width >= 720
    readonly property bool inRound: walk.mode === WalkViewModel.Round
    readonly property real paneWidth: beside ? 420 : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth
    readonly property real actsRoom: acts.height + 2 * Theme.gap + undoRoom
    property string asked: ""  // the mark that is asked about
    implicitHeight: actsRoom + 260

    signal finished
    signal whoAsked
    signal planAsked

    Accessible.role: Accessible.Pane
    Accessible.name: walk.title
    Keys.onPressed: event => {
        event.accepted = true;
        if (event.modifiers & (Qt.ControlModifier | Qt.AltModifier | Qt.MetaModifier))
            event.accepted = false;
        else if (event.key === Qt.Key_Return || event.key === Qt.Key_Enter)
            main.press();
        else if (event.key === Qt.Key_BracketLeft)
            walk.besidePanel(-1);
        else if (event.key === Qt.Key_BracketRight)
            walk.besidePanel(1);
        else if (event.key === Qt.Key_S && page.inRound)
            walk.skip();
        else if (!map.zoomKey(event))
            event.accepted = false;
    }

    Connections {
        target: page.walk
        function onTurned() {
            view.contentY = 0;
        }
        function onEnded() {
            page.finished();
        }
    }

    Flickable {
        id: view
        width: page.beside ? page.paneX : parent.width
        height: page.beside ? parent.height : parent.height - page.actsRoom
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
                    objectName: "walkTitle"
                    width: Math.min(natural, parent.width)
                    text: page.walk.title
                    bold: true
                    size: Theme.screen
                    Accessible.role: Accessible.Heading
                }
                Words {
                    width: Math.min(natural, parent.width)
                    visible: text !== ""
                    text: page.inRound ? qsTr("%1, %2").arg(page.walk.where).arg(page.walk.minutes) : ""
                    color: Theme.pencil
                }
            }
            NoteBanner {
                width: parent.width
                visible: page.walk.told !== ""
                kind: NoteBanner.Danger
                happened: page.walk.told
                stands: qsTr("Its other marks wait for the redo.")
            }
            RowLayout {
                width: parent.width
                spacing: Theme.gap

                PlainButton {
                    objectName: "walkPanelBefore"
                    visible: page.walk.stationCount > 1
                    pressable: visible
                    Layout.fillWidth: false
                    Layout.preferredWidth: Theme.touch
                    iconName: "back"
                    name: qsTr("The panel before")
                    onClicked: page.walk.besidePanel(-1)
                }
                Column {
                    Layout.fillWidth: true

                    Words {
                        width: parent.width
                        text: page.walk.panelTitle
                        bold: true
                        size: Theme.lead
                    }
                    Words {
                        width: parent.width
                        visible: text !== ""
                        text: page.walk.panelPlace
                        size: Theme.note
                        color: Theme.pencil
                    }
                }
                PlainButton {
                    objectName: "walkPanelNext"
                    visible: page.walk.stationCount > 1
                    pressable: visible
                    Layout.fillWidth: false
                    Layout.preferredWidth: Theme.touch
                    iconName: "forward"
                    name: qsTr("The next panel")
                    onClicked: page.walk.besidePanel(1)
                }
            }
            AreaMap {
                id: map
                width: parent.width
                height: page.walk.panel === "" ? 0 : page.beside ? Math.max(280, view.height - 190) : Math.max(190, view.height * 0.42)
                visible: page.walk.panel !== ""
                inspect: page.inspect
                panel: page.walk.panel
                areas: page.walk.areas
                rings: page.walk.rings
                inset: 12
                words: qsTr("%1, areas of this round to scale").arg(page.walk.panelTitle)
                onTapped: (xMm, yMm) => {
                    const near = page.walk.markNear(xMm, yMm, map.pattern.pxPerMm);
                    if (near !== "")
                        page.ask(near);
                }
            }
            Words {
                width: parent.width
                visible: page.inRound
                text: qsTr("filled: this round; dashed: the next")
                size: Theme.note
                color: Theme.pencil
            }
            Item {
                id: below
                visible: !page.beside
                width: parent.width
                height: todo.height
            }
        }
    }
    Flickable {
        visible: page.beside
        x: page.paneX
        width: page.paneWidth
        height: parent.height - page.actsRoom
        contentHeight: besides.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Item {
            id: besides
            width: parent.width
            height: todo.height + Theme.gap
        }
    }
    WalkTodo {
        id: todo
        parent: page.beside ? besides : below
        width: parent.width
        walk: page.walk
        onMarkAsked: key => page.ask(key)
    }
    Column {
        id: acts
        x: page.paneX
        width: page.paneWidth
        y: parent.height - height - Theme.gap
        spacing: Theme.gap

        GridLayout {
            id: others

            readonly property real wanted: burn.implicitWidth + add.implicitWidth
                + (skip.visible ? skip.implicitWidth + columnSpacing : 0) + columnSpacing

            width: parent.width
            visible: page.walk.mode === WalkViewModel.Round || page.walk.mode === WalkViewModel.Ask
            columns: wanted <= width ? 3 : 1
            columnSpacing: Theme.gap
            rowSpacing: Theme.gap

            PlainButton {
                id: skip
                objectName: "walkSkip"
                visible: page.inRound
                pressable: visible
                text: qsTr("Skip")
                name: qsTr("Skip: %1").arg(page.walk.title)
                onClicked: page.walk.skip()
            }
            PlainButton {
                id: add
                objectName: "walkAdd"
                text: qsTr("Add")
                name: qsTr("Add a round that was done besides")
                onClicked: adding.opened = true
            }
            PlainButton {
                id: burn
                objectName: "walkBurn"
                Layout.preferredWidth: 90
                text: qsTr("Burn-through")
                name: qsTr("Burn-through: color or primer shows")
                onClicked: {
                    page.asked = "";
                    ending.opened = true;
                }
            }
        }
        SlabButton {
            id: main
            objectName: "walkMain"
            width: parent.width
            height: implicitHeight
            text: page.walk.mainText === "" ? qsTr("Back to the plan") : page.walk.mainText
            secondLine: page.walk.mainText === "" ? "" : page.walk.mainSecond
            waits: page.walk.mainText !== "" && page.walk.mainWaits
            onRefused: page.walk.tooEarly === "" ? page.whoAsked() : page.planAsked()
            onClicked: page.walk.mainText === "" ? page.planAsked() : page.walk.act()
        }
    }
    ChoiceSheet {
        id: adding
        anchors.fill: parent
        title: qsTr("Which round was done besides?")
        choices: [page.walk.roundWords(0), page.walk.roundWords(1), page.walk.roundWords(2), page.walk.roundWords(3),
            page.walk.roundWords(4)]
        onChose: row => page.walk.add(row)
    }
    MarkEndSheet {
        id: ending
        objectName: "markEnds"
        anchors.fill: parent
        walk: page.walk
        mark: page.asked
    }

    function ask(key: string) {
        asked = key;
        ending.opened = true;
    }
}
