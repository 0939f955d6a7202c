// Sheet: something over the screen that closes to it. Make it fill the area it may cover; put the
// content inside (`parent.width` is the room), it scrolls when it is longer than the area.
// title, opened (settable), side (comes from the right, 408 wide, instead of from below).
// keepClear: an item that stays uncovered and usable (First aid). Signal: closed.
// While open it has the focus and keeps it; Esc and Back close it, and the focus goes back.
import QtQuick
import Jambline.Theme
import QtQuick.Window

FocusScope {
    id: sheet

    default property alias content: holder.data
    property string title: ""
    property bool opened: false
    property bool side: width >= 840
    property Item keepClear: null
    property Item cameFrom: null
    property bool wasOpen: false
    property real shown: opened ? 1 : 0

    readonly property rect hole: opened && keepClear !== null
        ? sheet.mapFromItem(keepClear, 0, 0, keepClear.width, keepClear.height) : Qt.rect(0, 0, 0, 0)

    signal closed

    function close() {
        opened = false;
    }

    function owns(item: Item): bool {
        for (let at = item; at !== null; at = at.parent) {
            if (at === sheet || at === keepClear)
                return true;
        }
        return false;
    }

    function keepFocus() {
        const now = Window.window ? Window.window.activeFocusItem : null;
        if (opened && enabled && now !== null && !owns(now))
            closer.forceActiveFocus();
    }

    visible: shown > 0
    z: 50
    Accessible.role: Accessible.Dialog
    Accessible.name: title
    Accessible.ignored: !opened

    onOpenedChanged: {
        if (opened) {
            cameFrom = Window.window ? Window.window.activeFocusItem : null;
            wasOpen = true;
            board.forceActiveFocus();
        } else if (wasOpen) {
            wasOpen = false;
            const back = cameFrom;
            cameFrom = null;
            if (back)
                back.forceActiveFocus();
            closed();
        }
    }

    Behavior on shown {
        NumberAnimation { duration: Theme.move; easing.type: Easing.OutCubic }
    }

    Keys.onEscapePressed: close()
    Keys.onBackPressed: close()

    onEnabledChanged: if (enabled && opened) board.forceActiveFocus()

    Connections {
        target: sheet.Window.window
        enabled: sheet.opened && sheet.enabled
        function onActiveFocusItemChanged() {
            // not within the change of focus that is going on
            Qt.callLater(sheet.keepFocus); // qmllint disable
        }
    }

    component Veil: Rectangle {
        id: veil

        signal touched

        color: Theme.veil
        Accessible.ignored: true

        MouseArea {
            anchors.fill: parent
            onClicked: veil.touched()
        }
    }

    Veil {
        onTouched: sheet.close()
        width: parent.width
        height: sheet.hole.height > 0 ? sheet.hole.y : parent.height
    }
    Veil {
        onTouched: sheet.close()
        y: sheet.hole.y
        width: sheet.hole.x
        height: sheet.hole.height
    }
    Veil {
        onTouched: sheet.close()
        x: sheet.hole.x + sheet.hole.width
        y: sheet.hole.y
        width: Math.max(0, parent.width - x)
        height: sheet.hole.height
    }
    Veil {
        onTouched: sheet.close()
        y: sheet.hole.y + sheet.hole.height
        width: parent.width
        height: sheet.hole.height > 0 ? Math.max(0, parent.height - y) : 0
    }

    Rectangle {
        id: board
        objectName: "sheetBoard"

        readonly property real least: sheet.hole.height > 0 ? sheet.hole.y + sheet.hole.height + 16 : 48
        readonly property real wanted: head.height + holder.childrenRect.height + 2 * Theme.gutter

        x: sheet.side ? parent.width - width : 0
        y: sheet.side ? 0 : parent.height - height
        width: sheet.side ? Math.min(408, parent.width) : parent.width
        height: sheet.side ? parent.height : Math.min(wanted, parent.height - least)
        color: Theme.paper

        transform: Translate {
            x: sheet.side ? board.width * (1 - sheet.shown) : 0
            y: sheet.side ? 0 : board.height * (1 - sheet.shown)
        }

        MouseArea {
            anchors.fill: parent
        }
        Rectangle {
            width: sheet.side ? 1.5 : parent.width
            height: sheet.side ? parent.height : 1.5
            color: Theme.ink
        }
        Item {
            id: head
            x: Theme.gutter
            y: 8
            width: parent.width - 2 * Theme.gutter
            height: Math.max(closer.height, name.implicitHeight) + 8

            Words {
                id: name
                y: Math.max(0, (closer.height - height) / 2)
                width: parent.width - closer.width - 12
                text: sheet.title
                bold: true
                size: Theme.screen
                Accessible.role: Accessible.Heading
            }
            PlainButton {
                id: closer
                objectName: "sheetClose"
                anchors.right: parent.right
                width: Math.max(96, implicitWidth)
                text: qsTr("Close")
                onClicked: sheet.close()
            }
        }
        Flickable {
            x: Theme.gutter
            y: head.y + head.height
            width: parent.width - 2 * Theme.gutter
            height: parent.height - y
            contentHeight: holder.childrenRect.height + Theme.gutter
            clip: contentHeight > height
            interactive: contentHeight > height
            boundsBehavior: Flickable.StopAtBounds

            Item {
                id: holder
                width: parent.width
                height: childrenRect.height
            }
        }
    }
}
