// InspectPanel: one panel large. A tap places a mark of the last kind, a drag over 16 dp moves one,
// the main button says what it records and goes on. inspect.openPanel(panel) chooses it.
// wide: all kinds at once. nextAsked(panel): on to that panel, "" back to the map.
// Keys: M the cross (arrows 10 mm, Shift 1 mm), N places, R the last kind again, [ ] panels, L clean,
// T to correct, G redo, + - 0 zoom, Enter the main act, Esc lets go of mark and cross.
import QtQuick
import QtQuick.Window
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: screen

    required property InspectViewModel inspect
    property bool wide: false

    readonly property bool roomy: wide || (!large && Window.height >= 1034)
    readonly property bool anyMark: inspect.chosenMark !== ""
    readonly property bool large: Theme.textScale > 1.2

    implicitHeight: area.y + (large ? 258 : 148) + chips.height + (anyMark ? marked.height + Theme.gap : 0)
        + (inspect.disputed ? dispute.height + Theme.gap : anyMark && !wide ? 0 : verdict.height + Theme.gap)
        + Theme.gap + main.height + 8

    signal nextAsked(string panel)

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
        width: Math.min(natural, parent.width - 2 * Theme.gutter)
        text: screen.inspect.panelTitle
        bold: true
        size: Theme.screen
        Accessible.role: Accessible.Heading
    }
    Words {
        id: count

        readonly property bool below: title.natural + natural + 3 * Theme.gutter > screen.width

        x: below ? Theme.gutter : screen.width - Theme.gutter - width
        y: below ? title.height : title.height - height - 2
        width: Math.min(natural, screen.width - 2 * Theme.gutter)
        text: screen.inspect.panelMarkWords
        bold: true
        size: Theme.lead
    }
    Words {
        id: facts
        x: Theme.gutter
        y: Math.max(title.height, count.text === "" ? 0 : count.y + count.height) + 2
        width: parent.width - 2 * Theme.gutter
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
            width: screen.width - 2 * Theme.gutter - 28
            text: screen.inspect.doNotCutWords
            bold: true
            size: Theme.note
        }
    }
    PanelMarks {
        id: area
        x: 8
        y: warning.y + warning.height + 4
        width: parent.width - 16
        height: Math.max(140, chips.y - y - 8)
        inspect: screen.inspect
        onMapAsked: screen.nextAsked("")

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
        y: (marked.visible ? marked.y : verdict.visible ? verdict.y : dispute.visible ? dispute.y : main.y) - height - Theme.gap
        width: parent.width - 2 * Theme.gutter
        height: implicitHeight
        inspect: screen.inspect
        wide: screen.wide && Window.height > 1100
        onPicked: kind => screen.inspect.kind = kind
        onOthers: {
            screen.inspect.choose("");
            sheet.opened = true;
        }
    }
    MarkRow {
        id: marked
        visible: screen.anyMark
        x: Theme.gutter
        y: (screen.roomy && verdict.visible ? verdict.y : dispute.visible ? dispute.y : main.y) - height - Theme.gap
        width: parent.width - 2 * Theme.gutter
        height: implicitHeight
        inspect: screen.inspect
        onKindAsked: sheet.opened = true
        onSizeAsked: size => screen.inspect.describeMark(screen.inspect.chosenKind, size, screen.inspect.chosenLayer)
        onWithdrawn: screen.inspect.withdrawMark()
    }
    VerdictRow {
        id: verdict
        visible: !dispute.visible && (screen.roomy || !screen.anyMark)
        x: Theme.gutter
        y: main.y - height - Theme.gap
        width: parent.width - 2 * Theme.gutter
        inspect: screen.inspect
        onDirtAsked: dirtSheet.opened = true
        onRackAsked: rackSheet.opened = true
    }
    DisputeCard {
        id: dispute
        visible: screen.inspect.disputed
        x: Theme.gutter
        y: main.y - height - Theme.gap
        width: parent.width - 2 * Theme.gutter
        height: implicitHeight
        inspect: screen.inspect
    }
    SlabButton {
        id: main
        objectName: "panelMain"
        x: Theme.gutter
        y: screen.height - height - 8
        width: parent.width - 2 * Theme.gutter
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
        onMoveAsked: area.moving = true
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
