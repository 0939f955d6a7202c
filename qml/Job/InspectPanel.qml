// InspectPanel: one panel large. A tap places a mark of the last kind, a drag over 16 dp moves one,
// the main button says what it records and goes on. inspect.openPanel(panel) chooses it.
// From 720 dp on: the panel and all kinds left, the list of its marks and the acts in a pane right.
// nextAsked(panel): on to that panel, "" back to the map. filmAsked: the film of this panel.
// Keys: M the cross (arrows 10 mm, Shift 1 mm), N places, R the last kind again, [ ] panels, L clean,
// T to correct, G redo, + - 0 zoom, Enter the main act, Esc lets go of mark and cross.
pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Window
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: screen

    required property InspectViewModel inspect
    property LookViewModel look: null  // pictures of marks, where there are any
    property bool wide: false

    property real undoRoom: 0  // kept free above the acts of the pane
    readonly property real actsTop: marked.visible ? marked.y : verdict.visible ? verdict.y : dispute.y
    readonly property real actsX: paneX
    readonly property real actsWidth: paneWidth
    readonly property bool beside: wide && width >= 720
    readonly property real paneWidth: beside ? (width >= 1200 ? 356 : 400) : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth
    readonly property real leftWidth: beside ? paneX - 8 : width
    readonly property bool roomy: beside || (!large && Window.height >= 1034)
    readonly property bool anyMark: inspect.chosenMark !== ""
    readonly property bool large: Theme.textScale > 1.2
    readonly property real actsHeight: main.height + 8
        + (inspect.disputed ? dispute.height + Theme.gap : anyMark && !roomy ? 0 : verdict.height + Theme.gap)
        + (anyMark ? marked.height + Theme.gap : 0)

    implicitHeight: beside ? Math.max(area.y + 258 + chips.height, list.y + Math.max(112, noMarks.visible ? noMarks.height : 0) + 2 * Theme.gap + undoRoom + actsHeight)
        : area.y + (large ? 258 : 148) + chips.height + 2 * Theme.gap + actsHeight

    signal nextAsked(string panel)
    signal filmAsked
    signal photoAsked(string mark)
    signal pictureAsked(string picture, var among)

    function arrow(key: int, step: real): bool {
        const dx = key === Qt.Key_Right ? step : key === Qt.Key_Left ? -step : 0;
        const dy = key === Qt.Key_Up ? step : key === Qt.Key_Down ? -step : 0;
        if (dx === 0 && dy === 0)
            return false;
        area.cross = Qt.point(area.cross.x + dx, area.cross.y + dy);
        return true;
    }
    function letter(key: int): bool {
        if (key === Qt.Key_M && area.crossed)
            area.crossed = false;
        else if (key === Qt.Key_M)
            area.startCross();
        else if (key === Qt.Key_N && area.crossed)
            inspect.placeMark(area.cross.x, area.cross.y);
        else if (key === Qt.Key_R && anyMark)
            inspect.kind = inspect.chosenKind;
        else if (key === Qt.Key_BracketLeft)
            nextAsked(inspect.besidePanel(-1));
        else if (key === Qt.Key_BracketRight)
            nextAsked(inspect.besidePanel(1));
        else if (key === Qt.Key_L)
            inspect.sayClean();
        else if (key === Qt.Key_T)
            inspect.sayToCorrect();
        else if (key === Qt.Key_G)
            inspect.sayRedo();
        else if (key === Qt.Key_Return || key === Qt.Key_Enter)
            main.press();
        else
            return false;
        return true;
    }

    Accessible.role: Accessible.Pane
    Accessible.name: inspect.panelTitle

    Keys.onPressed: event => {
        if (event.modifiers & (Qt.ControlModifier | Qt.AltModifier | Qt.MetaModifier))
            return;
        if (event.key === Qt.Key_Escape) {
            event.accepted = area.crossed || anyMark || area.moving;
            area.crossed = false;
            area.moving = false;
            inspect.choose("");
            return;
        }
        event.accepted = (area.crossed && arrow(event.key, event.modifiers & Qt.ShiftModifier ? 1 : 10))
            || area.view.zoomKey(event) || letter(event.key);
    }

    Connections {
        target: screen.inspect
        function onWentOn(panel: string) {
            screen.nextAsked(panel);
        }
        function onPanelChanged() {
            area.crossed = false;
            area.moving = false;
            slide.restart();
        }
    }

    Words {
        id: title
        x: Theme.gutter
        width: Math.min(natural, screen.leftWidth - 2 * Theme.gutter)
        text: screen.inspect.panelTitle
        bold: true
        size: Theme.screen
        Accessible.role: Accessible.Heading
    }
    Words {
        id: count

        readonly property bool below: !screen.beside && title.natural + natural + 3 * Theme.gutter > screen.width

        x: screen.beside ? screen.paneX : below ? Theme.gutter : screen.width - Theme.gutter - width
        y: below ? title.height : title.height - height - 2
        width: Math.min(natural, screen.paneWidth)
        text: screen.inspect.panelMarkWords === "" && screen.beside ? qsTr("No marks yet") : screen.inspect.panelMarkWords
        bold: true
        size: Theme.lead
    }
    Words {
        id: facts
        x: Theme.gutter
        y: Math.max(title.height, count.text === "" || screen.beside ? 0 : count.y + count.height) + 2
        width: screen.leftWidth - 2 * Theme.gutter
        text: area.moving ? qsTr("Tap where %1 belongs").arg(screen.inspect.chosenTitle)
            : screen.inspect.refusal !== "" ? screen.inspect.refusal : screen.inspect.panelFacts
        bold: area.moving || screen.inspect.refusal !== ""
        visible: !screen.large || screen.roomy || bold
        size: Theme.note
        color: area.moving ? Theme.ink : screen.inspect.refusal !== "" ? Theme.oxide : Theme.pencil
        Accessible.role: screen.inspect.refusal !== "" ? Accessible.AlertMessage : Accessible.StaticText
    }
    Row {
        id: warning
        visible: screen.inspect.doNotCutWords !== ""
        x: Theme.gutter
        y: facts.y + (facts.visible ? facts.height : 0) + 6
        height: visible ? warned.height : 0
        spacing: 8

        StateShape {
            kind: ShapeKind.Must
            size: 20
            anchors.verticalCenter: parent.verticalCenter
        }
        Words {
            id: warned
            width: screen.leftWidth - 2 * Theme.gutter - 28
            text: screen.inspect.doNotCutWords
            bold: true
            size: Theme.note
        }
    }
    PanelMarks {
        id: area
        x: 8
        y: warning.y + warning.height + 4
        width: screen.leftWidth - 16
        height: Math.max(140, chips.y - y - 8)
        inspect: screen.inspect
        onMapAsked: screen.nextAsked("")
        onFilmAsked: screen.filmAsked()

        transform: Translate { id: shift }
        NumberAnimation {
            id: slide
            target: shift
            property: "x"
            from: 48
            to: 0
            duration: Theme.move
            easing.type: Easing.OutCubic
        }
    }
    KindChips {
        id: chips
        x: Theme.gutter
        y: (screen.beside ? screen.height - 8 + Theme.gap : marked.visible ? marked.y : verdict.visible ? verdict.y
            : dispute.visible ? dispute.y : main.y) - height - Theme.gap
        width: screen.leftWidth - 2 * Theme.gutter
        height: implicitHeight
        inspect: screen.inspect
        wide: screen.beside && Window.height > 1000
        onPicked: kind => screen.inspect.kind = kind
        onOthers: {
            screen.inspect.choose("");
            sheet.opened = true;
        }
    }
    ListView {
        id: list
        objectName: "markList"
        visible: screen.beside
        x: screen.paneX
        y: Math.max(title.height, count.y + count.height) + Theme.gap
        width: screen.paneWidth
        height: Math.max(0, screen.actsTop - y - Theme.gap - screen.undoRoom)
        clip: true
        spacing: Theme.gap
        boundsBehavior: Flickable.StopAtBounds
        model: screen.beside ? screen.inspect.marks : null
        currentIndex: screen.inspect.chosenRow
        delegate: MarkLine {
            width: list.width
            chosen: screen.inspect.chosenMark === mark
            onClicked: {
                screen.inspect.choose(mark);
                sheet.opened = true;
            }
        }
    }
    PaperCard {
        id: noMarks
        visible: screen.beside && screen.inspect.panelMarkCount === 0
        x: screen.paneX
        y: list.y
        width: screen.paneWidth
        dashed: true

        Words {
            width: parent.width
            text: screen.inspect.dirtWords !== "" ? screen.inspect.dirtWords : qsTr("Each mark on this panel gets a line here.")
            color: Theme.pencil
        }
    }
    MarkRow {
        id: marked
        visible: screen.anyMark
        x: screen.paneX
        y: (screen.roomy && verdict.visible ? verdict.y : dispute.visible ? dispute.y : main.y) - height - Theme.gap
        width: screen.paneWidth
        height: implicitHeight
        inspect: screen.inspect
        onKindAsked: sheet.opened = true
        onLookAsked: {
            sheet.onlyLooks = true;
            sheet.opened = true;
        }
        onSizeAsked: size => screen.inspect.describeMark(screen.inspect.chosenKind, size, screen.inspect.chosenLayer)
        onWithdrawn: screen.inspect.withdrawMark()
    }
    VerdictRow {
        id: verdict
        visible: !dispute.visible && (screen.roomy || !screen.anyMark)
        x: screen.paneX
        y: main.y - height - Theme.gap
        width: screen.paneWidth
        inspect: screen.inspect
        onDirtAsked: dirtSheet.opened = true
        onRackAsked: rackSheet.opened = true
    }
    DisputeCard {
        id: dispute
        visible: screen.inspect.disputed
        x: screen.paneX
        y: main.y - height - Theme.gap
        width: screen.paneWidth
        height: implicitHeight
        inspect: screen.inspect
    }
    SlabButton {
        id: main
        objectName: "panelMain"
        x: screen.paneX
        y: screen.height - height - 8
        width: screen.paneWidth
        height: implicitHeight
        text: screen.inspect.mainText
        secondLine: screen.inspect.mainSecond
        waits: screen.inspect.disputed
        onClicked: screen.inspect.mainAct()
        onRefused: screen.inspect.mainAct()
    }
    MarkSheet {
        id: sheet
        anchors.fill: parent
        inspect: screen.inspect
        look: screen.look
        onMoveAsked: area.moving = true
        onPhotoAsked: screen.photoAsked(screen.inspect.chosenMark)
        onPictureAsked: (picture, among) => screen.pictureAsked(picture, among)
    }
    ChoiceSheet {
        id: dirtSheet
        anchors.fill: parent
        title: qsTr("Dirt all over")
        choices: [qsTr("No"), qsTr("10 to 20 nibs"), qsTr("20 to 50 nibs"), qsTr("Over 50 nibs")]
        current: screen.inspect.dirt
        onChose: row => screen.inspect.sayDirt(row)
    }
    ChoiceSheet {
        id: rackSheet
        anchors.fill: parent
        title: qsTr("Which rack")
        choices: screen.inspect.rackCount > 0 ? screen.inspect.rackNames() : []
        onChose: row => screen.inspect.chooseRack(row)
    }
}
