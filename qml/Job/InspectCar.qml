// InspectCar: the whole car unfolded: what is clean, what is marked, what nobody has looked at, and
// the next panel of the walk. wide: the panels also as a list, on a desk all marks too. A tap on a
// panel or a row, or the main button, gives panelAsked(panel), the entry's word; when every panel is
// looked at the main button gives planAsked() when marks are open, else carAsked().
// The row above it leads to what threw the dirt: evidenceAsked().
// Keys: J K or arrows walk, Enter opens, + - 0 zoom.
pragma ComponentBehavior: Bound
import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: screen

    required property InspectViewModel inspect
    property EvidenceViewModel evidence: null
    property bool wide: false
    implicitHeight: map.y + 220 + 8 + counts.height + 12 + (beside ? 0 : undoRoom + main.height) + (thrown.visible ? thrown.height + 8 : 0) + 8
    property real undoRoom: 0  // kept free above the main act
    readonly property real actsTop: thrown.visible && !beside ? thrown.y : main.y
    readonly property real actsX: paneX
    readonly property real actsWidth: paneWidth
    property int cursor: -1

    signal panelAsked(string panel)
    signal carAsked
    signal evidenceAsked
    signal planAsked

    readonly property string here: cursor >= 0 ? inspect.panelAt(cursor)
        : wide && inspect.panel !== "" ? inspect.panel : inspect.nextPanel
    readonly property bool beside: wide && width >= 720
    readonly property bool roomy: beside && width >= 1100
    readonly property real paneWidth: roomy ? 680 : beside ? 324 : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth
    readonly property real mapRoom: beside ? paneX - 8 : width
    readonly property real listTop: map.y + (roomy ? panelsTitle.height + Theme.gap : 0)
    readonly property real listHeight: Math.max(0, actsTop - listTop - 8 - undoRoom)
    readonly property real listWidth: roomy ? (paneWidth - Theme.gutter) / 2 : paneWidth

    function step(by: int) {
        const count = inspect.panelCount;
        if (count === 0)
            return;
        const from = cursor >= 0 ? cursor : inspect.rowOf(here) - by;
        cursor = ((from + by) % count + count) % count;
    }

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Look over")

    Keys.onPressed: event => {
        event.accepted = true;
        if (event.modifiers & (Qt.ControlModifier | Qt.AltModifier | Qt.MetaModifier))
            event.accepted = false;
        else if (event.key === Qt.Key_J || event.key === Qt.Key_Down || event.key === Qt.Key_Right)
            step(1);
        else if (event.key === Qt.Key_K || event.key === Qt.Key_Up || event.key === Qt.Key_Left)
            step(-1);
        else if ((event.key === Qt.Key_Return || event.key === Qt.Key_Enter) && here !== "")
            panelAsked(here);
        else if (!map.zoomKey(event))
            event.accepted = false;
    }

    Words {
        id: title
        x: Theme.gutter
        width: Math.min(natural, parent.width - 2 * Theme.gutter)
        text: qsTr("Look over")
        bold: true
        size: Theme.screen
        Accessible.role: Accessible.Heading
    }
    Words {
        id: seen

        readonly property bool below: title.natural + natural + 3 * Theme.gutter > screen.width

        x: below ? Theme.gutter : screen.width - Theme.gutter - width
        y: below ? title.height : title.height - height - 3
        width: Math.min(natural, screen.width - 2 * Theme.gutter)
        text: screen.inspect.lookedAtWords
        color: Theme.pencil
    }
    PatternMap {
        id: map
        x: screen.beside ? 0 : 4
        y: Math.max(title.height, seen.y + seen.height) + 4
        width: screen.mapRoom - 2 * x
        height: counts.y - y - 8
        inspect: screen.inspect
        chosen: screen.here
        inset: 18
        onTapped: (xMm, yMm, xPx, yPx) => {
            const panel = map.pattern.pick(xPx, yPx);
            if (panel !== "")
                screen.panelAsked(panel);
        }

        Words {
            x: (map.width - width) / 2
            y: Math.max(-4, map.pattern.contentPx.y - height - 1)
            visible: map.pattern.zoom < 1.01 && map.pattern.contentPx.y - height >= -4
            text: qsTr("front")
            size: Theme.small
            color: Theme.pencil
        }
        Repeater {
            model: screen.inspect.panels

            PanelTag {
                on: map
                onAsked: panel => screen.panelAsked(panel)
            }
        }
    }
    Flow {
        id: counts
        x: Theme.gutter
        y: screen.beside ? (thrown.visible ? thrown.y : screen.height - 8) - height - 8 : screen.actsTop - height - 12 - screen.undoRoom
        width: screen.mapRoom - 2 * Theme.gutter
        spacing: 6

        Repeater {
            model: [
                {look: PanelLook.Clean, words: screen.inspect.cleanWords},
                {look: PanelLook.ToCorrect, words: screen.inspect.markWords},
                {look: PanelLook.NotYet, words: qsTr("%1 not yet").arg(screen.inspect.notYetCount)},
                {look: PanelLook.Disputed, words: screen.inspect.otherCount > 0
                    ? qsTr("%1 else").arg(screen.inspect.otherCount) : ""}
            ]

            Row {
                id: tally
                required property var modelData
                visible: modelData.words !== ""
                spacing: 8
                rightPadding: 8

                LookShape {
                    look: tally.modelData.look
                    size: 20
                    key: "tally"
                    anchors.verticalCenter: parent.verticalCenter
                }
                Words {
                    text: tally.modelData.words
                    size: Theme.note
                }
            }
        }
        Row {
            visible: screen.inspect.noCutCount > 0
            spacing: 8

            StateShape {
                kind: ShapeKind.Must
                size: 20
                anchors.verticalCenter: parent.verticalCenter
            }
            Words {
                text: qsTr("%1 do not cut").arg(screen.inspect.noCutCount)
                size: Theme.note
            }
        }
    }
    Words {
        id: panelsTitle
        visible: screen.roomy
        x: screen.paneX
        y: map.y
        width: Math.min(natural, screen.listWidth)
        text: qsTr("Panels")
        bold: true
        size: Theme.lead
        Accessible.role: Accessible.Heading
    }
    ListView {
        id: list
        visible: screen.beside
        x: screen.paneX
        y: screen.listTop
        width: screen.listWidth
        height: screen.listHeight
        clip: true
        spacing: Theme.gap
        boundsBehavior: Flickable.StopAtBounds
        model: screen.beside ? screen.inspect.panels : null
        currentIndex: screen.inspect.rowOf(screen.here)
        delegate: PanelRow {
            width: list.width
            chosen: list.currentIndex === index
            onClicked: screen.panelAsked(panel)
        }
    }
    Words {
        visible: screen.roomy
        x: found.x
        y: map.y
        width: Math.min(natural, screen.listWidth)
        text: screen.inspect.markWords
        bold: true
        size: Theme.lead
        Accessible.role: Accessible.Heading
    }
    ListView {
        id: found
        objectName: "carMarks"
        visible: screen.roomy
        x: screen.width - Theme.gutter - width
        y: screen.listTop
        width: screen.listWidth
        height: screen.listHeight
        clip: true
        spacing: Theme.gap
        boundsBehavior: Flickable.StopAtBounds
        model: screen.roomy ? screen.inspect.carMarks : null
        delegate: MarkLine {
            required property string panel

            width: found.width
            onClicked: {
                const wanted = mark;
                screen.panelAsked(panel);
                screen.inspect.choose(wanted);
            }
        }
    }
    EvidenceRow {
        id: thrown
        x: screen.beside ? Theme.gutter : screen.paneX
        y: screen.beside ? screen.height - height - 8 : main.y - height - 8
        width: screen.beside ? screen.mapRoom - 2 * Theme.gutter : screen.paneWidth
        height: implicitHeight
        evidence: screen.evidence
        onClicked: screen.evidenceAsked()
    }
    SlabButton {
        id: main
        objectName: "lookOverNext"
        x: screen.paneX
        y: screen.height - height - 8
        width: screen.paneWidth
        height: implicitHeight
        visible: screen.inspect.panelCount > 0
        pressable: visible
        text: toPlan ? qsTr("Plan the correction") : allSeen ? qsTr("Back to the car") : qsTr("Look over %1").arg(screen.inspect.nextWords)
        secondLine: allSeen ? qsTr("every panel is looked at") : ""
        onClicked: toPlan ? screen.planAsked() : allSeen ? screen.carAsked() : screen.panelAsked(screen.inspect.nextPanel)

        readonly property bool allSeen: screen.inspect.nextPanel === ""
        readonly property bool toPlan: allSeen && screen.inspect.markCount > 0 && !screen.inspect.readOnly
    }
    Words {
        anchors.centerIn: main
        width: Math.min(natural, main.width)
        visible: screen.inspect.panelCount === 0
        text: qsTr("No panels are planned on this car")
        horizontalAlignment: Text.AlignHCenter
        bold: true
    }
}
