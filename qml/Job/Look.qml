// Look: one picture large: zoom, on to the next, what is known of it, notes drawn on it. look: the
// view model; wide: what is known and the acts in a pane right. Signals: compareAsked, wallAsked,
// markAsked(panel, mark).
// Keys: arrows the one before and after, or move when zoomed in; + - 0 zoom; D draw; F what is
// known; B before and after; Esc lets go of the pencil.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property LookViewModel look
    property bool wide: false
    property bool drawing: false
    property int tool: 1
    property real undoRoom: 0  // kept free above the acts
    readonly property bool beside: wide && width >= 720
    readonly property real actsTop: acts.y
    readonly property real actsX: acts.x
    readonly property real actsWidth: acts.width
    readonly property real paneWidth: beside ? 376 : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth

    implicitHeight: beside ? said.height + acts.height + 240 + undoRoom : said.height + 240 + acts.height + 3 * Theme.gap + undoRoom

    signal compareAsked
    signal wallAsked
    signal markAsked(string panel, string mark)

    function startDrawing() {
        tool = 1;
        drawing = true;
    }
    function act(key: int): bool {
        if (key === Qt.Key_Left && look.hasPrevious)
            look.previous();
        else if (key === Qt.Key_Right && look.hasNext)
            look.next();
        else if (key === Qt.Key_D && look.writable)
            startDrawing();
        else if (key === Qt.Key_F && !beside)
            known.opened = true;
        else if (key === Qt.Key_B && look.comparable)
            compareAsked();
        else
            return false;
        return true;
    }

    Accessible.role: Accessible.Pane
    Accessible.name: look.title

    Keys.onPressed: event => {
        if (event.modifiers & (Qt.ControlModifier | Qt.AltModifier | Qt.MetaModifier))
            return;
        if (event.key === Qt.Key_Escape) {
            event.accepted = drawing;
            drawing = false;
            return;
        }
        event.accepted = sight.zoomKey(event.key) || sight.panKey(event.key) || act(event.key);
    }

    Connections {
        target: page.look
        function onChanged() {
            if (!page.look.writable)
                page.drawing = false;
        }
    }

    Pressable {
        id: said
        objectName: "lookKnown"
        x: page.beside ? page.paneX : Theme.gutter
        y: page.beside ? Theme.gap : 0
        width: page.paneWidth
        height: Math.max(page.beside ? 0 : Theme.touch, titles.height)
        pressable: !page.beside
        name: page.beside ? page.look.title : qsTr("%1. Opens what is known of it.").arg(page.look.title)
        onClicked: known.opened = true

        Icon {
            visible: !page.beside
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            source: "info"
        }
    }
    Column {
        id: titles
        x: said.x
        y: said.y + (said.height - height) / 2
        width: said.width - (page.beside ? 0 : 36)
        spacing: 2

        Words {
            objectName: "lookTitle"
            width: parent.width
            text: page.look.title
            mute: !page.beside
            bold: true
            size: Theme.title
            Accessible.role: Accessible.Heading
        }
        Words {
            objectName: "lookLine"
            width: parent.width
            text: page.look.placeInList === "" ? page.look.line : qsTr("%1 · %2").arg(page.look.line).arg(page.look.placeInList)
            size: Theme.note
            color: Theme.pencil
        }
        Row {
            visible: page.look.poor !== ""
            width: parent.width
            spacing: 8

            StateShape {
                id: poorShape
                kind: ShapeKind.Waits
                size: 20
                ground: Theme.paper
            }
            Words {
                objectName: "lookPoor"
                width: parent.width - poorShape.width - 8
                text: page.look.poor
                bold: true
                size: Theme.note
                color: Theme.ochreInk
            }
        }
        Words {
            objectName: "lookClock"
            width: parent.width
            visible: text !== ""
            text: page.look.clockWords
            bold: true
            size: Theme.note
            color: Theme.ochreInk
        }
    }
    LookSight {
        id: sight
        x: page.beside ? Theme.gutter : 0
        y: page.beside ? Theme.gap : said.height + Theme.gap
        width: page.beside ? page.paneX - 2 * Theme.gutter : page.width
        height: (page.beside ? page.height - Theme.gap : acts.y - page.undoRoom - Theme.gap) - y
        look: page.look
        tool: page.drawing ? page.tool : 0
        onTextAsked: (x, y) => writing.ask(x, y)
    }
    Flickable {
        visible: page.beside
        x: page.paneX
        y: said.y + said.height + Theme.gap
        width: page.paneWidth
        height: acts.y - page.undoRoom - Theme.gap - y
        contentHeight: paneFacts.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        LookFacts {
            id: paneFacts
            width: parent.width
            look: page.look
            onMarkAsked: page.markAsked(page.look.markPanel, page.look.markKey)
            onFilingAsked: filing.opened = true
        }
    }
    Column {
        id: acts
        x: page.paneX
        width: page.paneWidth
        y: parent.height - height - Theme.gap
        spacing: Theme.gap

        LookTools {
            visible: page.drawing
            width: parent.width
            tool: page.tool
            onChose: tool => page.tool = tool
        }
        ActRow {
            visible: !page.drawing
            width: parent.width

            PlainButton {
                objectName: "lookPrevious"
                visible: page.look.hasPrevious
                pressable: visible
                text: qsTr("Previous")
                iconName: "back"
                onClicked: page.look.previous()
            }
            PlainButton {
                objectName: "lookCompare"
                visible: page.look.comparable
                pressable: visible
                text: qsTr("Compare")
                name: qsTr("Before and after")
                iconName: "swap"
                onClicked: page.compareAsked()
            }
            PlainButton {
                objectName: "lookDraw"
                visible: page.look.writable
                pressable: visible
                text: qsTr("Draw")
                iconName: "pencil"
                onClicked: page.startDrawing()
            }
        }
        SlabButton {
            objectName: "lookMain"
            width: parent.width
            height: implicitHeight
            text: page.drawing ? qsTr("Done drawing") : page.look.hasNext ? qsTr("Next picture") : qsTr("All pictures")
            secondLine: page.drawing ? qsTr("the file itself stays as it is") : page.look.placeInList
            onClicked: {
                if (page.drawing)
                    page.drawing = false;
                else if (page.look.hasNext)
                    page.look.next();
                else
                    page.wallAsked();
            }
        }
    }
    Sheet {
        id: known
        anchors.fill: parent
        title: qsTr("What is known")

        LookFacts {
            width: parent.width
            look: page.look
            onMarkAsked: {
                known.close();
                page.markAsked(page.look.markPanel, page.look.markKey);
            }
            onFilingAsked: {
                known.close();
                filing.opened = true;
            }
        }
    }
    FilingSheet {
        id: filing
        anchors.fill: parent
        look: page.look
    }
    NoteSheet {
        id: writing
        anchors.fill: parent
        look: page.look
    }
}
