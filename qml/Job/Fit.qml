// Fit: the gaps of the panels that are set at slots. Without a panel the list of them; with one its
// bars, the map with points and arrows, what they say and the act that follows. fit, inspect: the view
// models. wide: bars and map left, what is said or the keys in a pane right. On a phone the keys come
// with the main act and go with "Panel".
// Signals: whoAsked, shotAsked(stage, key).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property FitViewModel fit
    required property InspectViewModel inspect
    property bool wide: false
    property bool typing: false
    property real undoRoom: 0  // kept free above the main act
    readonly property bool here: fit.panel !== ""
    readonly property bool keys: here && typing
    readonly property bool beside: wide && here && width >= 720
    readonly property bool tight: keys && !beside
    // The undo row never lies on the keys: it takes the place of gap and flush until a number is typed.
    readonly property bool undoAway: tight && (fit.typedCount > 0 || fit.pending >= 0)
    readonly property real actsTop: tight ? pad.y + pad.keysTop : main.visible ? main.y : height
    readonly property real actsX: main.x
    readonly property real actsWidth: main.width
    readonly property real paneWidth: beside ? (Theme.desk ? 440 : 384) : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth
    readonly property bool large: Theme.textScale > 1.2

    signal whoAsked
    signal shotAsked(string stage, string key)

    function measure(kind: int) {
        fit.begin(kind);
        typing = true;
    }

    function act() {
        switch (fit.mainAct) {
        case FitViewModel.OpenPanel:
        case FitViewModel.NextPanel:
            fit.openPanel(fit.nextPanel());
            break;
        case FitViewModel.Measure:
            measure(FitViewModel.Gap);
            break;
        case FitViewModel.MoveAsSaid:
            fit.moveAsSaid();
            break;
        case FitViewModel.CheckLatch:
            fit.checkLatch();
            break;
        }
    }

    implicitHeight: tight ? pad.implicitHeight + main.height + 2 * Theme.gap + 4
        : beside && keys ? head.height + pad.implicitHeight + main.height + undoRoom + 4 * Theme.gap
        : head.height + main.height + undoRoom + (large ? 300 : 260)

    Accessible.role: Accessible.Pane
    Accessible.name: here ? qsTr("Fit, %1").arg(fit.panelTitle) : qsTr("Fit")

    onHereChanged: if (!here) typing = false

    Keys.onEscapePressed: event => {
        event.accepted = page.typing;
        page.typing = false;
    }

    Connections {
        target: page.fit
        function onSumOpened() {
            sumSheet.opened = true;
        }
        function onKept() {
            page.typing = false;
        }
        function onMoved() {
            page.measure(FitViewModel.Gap);
        }
    }

    Item {
        id: head
        visible: !page.tight
        x: Theme.gutter
        width: parent.width - 2 * Theme.gutter
        height: Math.max(titles.height, panels.visible ? panels.height : 0)

        Column {
            id: titles
            width: parent.width - (panels.visible ? panels.width + 12 : 0)
            anchors.verticalCenter: parent.verticalCenter
            spacing: 2

            Words {
                objectName: "fitTitle"
                width: parent.width
                text: page.here ? page.fit.title : qsTr("Fit")
                bold: true
                size: page.here ? Theme.title : Theme.screen
                Accessible.role: Accessible.Heading
            }
            Words {
                width: parent.width
                visible: page.here
                text: page.fit.datumWords
                size: Theme.note
                color: Theme.pencil
            }
        }
        PlainButton {
            id: panels
            objectName: "fitPanels"
            visible: page.here && page.fit.panelCount > 1
            pressable: visible
            x: parent.width - width
            height: implicitHeight
            text: qsTr("Panels")
            textSize: Theme.note
            name: qsTr("All panels of this car")
            onClicked: page.fit.openPanel("")
        }
    }
    Flickable {
        id: view
        visible: !page.tight
        y: head.height + Theme.gap
        width: page.beside ? page.paneX : parent.width
        height: (page.beside ? parent.height : page.actsTop - page.undoRoom) - y - Theme.gap
        contentHeight: body.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: body
            x: Theme.gutter
            width: view.width - 2 * Theme.gutter
            spacing: Theme.gap
            bottomPadding: Theme.gap

            NoteBanner {
                width: parent.width
                visible: page.fit.shutWords !== ""
                happened: page.fit.shutWords
                stands: qsTr("Nothing is changed.")
            }
            FitPanels {
                width: parent.width
                visible: !page.here
                fit: page.fit
            }
            FitBars {
                id: bars
                width: parent.width
                visible: page.here
                fit: page.fit
                chartHeight: page.beside ? 160 : 84
            }
            Item {
                width: parent.width
                height: map.height
                visible: page.here

                FitMap {
                    id: map
                    width: parent.width
                    height: page.beside ? Math.max(240, view.height - bars.height - 3 * Theme.gap) : Math.max(190, Math.min(280, width * 0.5))
                    fit: page.fit
                    inspect: page.inspect
                    onPointTaken: if (page.fit.shutWords === "" && !page.beside) page.measure(FitViewModel.Gap)
                }
            }
            Item {
                id: below
                visible: !page.beside
                width: parent.width
                height: said.height
            }
        }
    }
    Flickable {
        visible: page.beside && !page.keys
        x: page.paneX
        y: head.height + Theme.gap
        width: page.paneWidth
        height: page.actsTop - page.undoRoom - y - Theme.gap
        contentHeight: paneSaid.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Item {
            id: paneSaid
            width: parent.width
            height: said.height
        }
    }
    Column {
        id: said
        parent: page.beside ? paneSaid : below
        width: parent.width
        spacing: Theme.gap

        FitAnswer {
            width: parent.width
            visible: page.here
            fit: page.fit
        }
        FitBeside {
            width: parent.width
            fit: page.fit
            over: page
            onMeasureAsked: kind => page.measure(kind)
            onShotAsked: page.shotAsked(page.fit.marksStage, page.fit.marksKey)
            onMovesAsked: movesSheet.opened = true
        }
    }
    FitPad {
        id: pad
        visible: page.keys
        x: page.paneX
        y: page.tight ? 0 : head.height + Theme.gap
        width: page.paneWidth
        height: implicitHeight
        focus: page.keys
        fit: page.fit
        backText: qsTr("Panel")
        covered: page.tight && page.undoRoom > 0 && !page.undoAway
        onBackAsked: page.typing = false
    }
    SlabButton {
        id: main
        objectName: "fitMain"
        x: page.paneX
        y: parent.height - height - (page.tight ? 4 : Theme.gap)
        width: page.paneWidth
        height: implicitHeight
        visible: page.keys || page.fit.mainAct !== FitViewModel.None
        pressable: visible
        text: page.keys ? page.fit.keepText : page.fit.mainText
        secondLine: page.keys ? "" : page.fit.mainSecond
        waits: page.keys ? page.fit.keepWaits : page.fit.mainWaits
        onRefused: if (page.fit.asksWho) page.whoAsked()
        onClicked: page.keys ? page.fit.keep() : page.act()
    }
    FitMovesSheet {
        id: movesSheet
        anchors.fill: parent
        fit: page.fit
    }
    SumSheet {
        id: sumSheet
        anchors.fill: parent
        sum: page.fit.sum
    }
}
