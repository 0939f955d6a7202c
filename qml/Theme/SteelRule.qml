// SteelRule: the clock of a person, and any use against an allowance. name (spoken) must be set.
// operation (bold), who (second line), seconds (shown h:mm:ss; below 0 shows none), used_h,
// allotted_h (0: no flag), mode: SteelRule.None, Running, Paused. over follows from the hours.
// tabText, tabLead: the tape tab that switches ("switch to" / "Correct"); empty: no tab.
// Signals: clicked (opens the clock), switched (the tab). 76 high (desk 64), grows with its words.
import QtQuick
import Jambline.Theme

Pressable {
    id: rule

    enum Mode { None, Running, Paused }

    property string operation: ""
    property string who: ""
    property real seconds: -1
    property real used_h: 0
    property real allotted_h: 0
    property int mode: SteelRule.Running
    property string tabText: ""
    property string tabLead: qsTr("switch to")
    property string tabName: qsTr("Switch the clock to %1").arg(tabText)
    property bool doubtful: false

    readonly property bool over: allotted_h > 0 && used_h > allotted_h
    readonly property bool folded: tab.visible && tabRoom < tabWidth
    readonly property real tabWidth: Math.max(104, tabWords.implicitWidth + 28)
    readonly property real tabRoom: width - 48 - Math.max(80, left.wanted) - clock.width - 2 * 8 - Theme.gutter

    signal switched

    guarded: true
    ringed: false
    implicitWidth: 412
    implicitHeight: Math.max(Theme.rule, left.implicitHeight + 32) + (folded ? tab.height + 4 : 0)

    Rectangle {
        anchors.fill: parent
        color: rule.pressed ? Qt.darker(Theme.steel, 1.05) : Theme.steel
    }
    Rectangle {
        anchors { left: parent.left; right: parent.right; bottom: parent.bottom }
        height: 1
        color: Theme.edge
    }
    RulePaper {
        id: edge
        objectName: "ruleEdge"
        width: parent.width
        height: 16
        used: rule.used_h
        allotted: rule.allotted_h
        ink: Theme.ink
        flag: Theme.tape
        bar: rule.over ? Theme.oxide : rule.mode === SteelRule.Paused ? Theme.pencil : Theme.blue
        Accessible.ignored: true
    }
    Item {
        id: first
        y: 16
        width: parent.width
        height: Math.max(Theme.rule, left.implicitHeight + 32) - 16

        StateShape {
            x: 27 - width / 2
            anchors.verticalCenter: parent.verticalCenter
            size: rule.mode === SteelRule.None ? 20 : 18
            ground: Theme.steel
            kind: rule.mode === SteelRule.Running ? ShapeKind.Running
                : rule.mode === SteelRule.Paused ? ShapeKind.Paused : ShapeKind.NotYet
        }
        Column {
            id: left

            readonly property real wanted: Math.max(head.natural, second.natural)

            x: 48
            width: clock.x - x - 8 - (tab.visible && !rule.folded ? rule.tabWidth + 8 : 0)
            anchors.verticalCenter: parent.verticalCenter

            Words {
                id: head
                width: parent.width
                text: rule.operation
                mute: true
                bold: true
                size: Theme.body
            }
            Words {
                id: second
                width: parent.width
                visible: text !== ""
                text: rule.who
                mute: true
                bold: rule.over
                size: Theme.note
                color: rule.over ? Theme.ink : Theme.pencil
            }
        }
        TimeText {
            id: clock
            objectName: "ruleClock"
            anchors.right: parent.right
            anchors.rightMargin: Theme.gutter
            anchors.verticalCenter: parent.verticalCenter
            visible: rule.seconds >= 0
            width: visible ? implicitWidth : 0
            seconds: rule.seconds
            size: Theme.clock
            bold: true
            doubtful: rule.doubtful
            mute: true
        }
    }
    Pressable {
        id: tab
        objectName: "ruleTab"
        visible: rule.tabText !== ""
        pressable: visible
        guarded: true
        name: rule.tabName
        width: rule.folded ? parent.width - 2 * Theme.gutter : rule.tabWidth
        height: rule.folded ? Math.max(Theme.touch, tabWords.implicitHeight + 12) : first.height + 12
        x: rule.folded ? Theme.gutter : clock.x - width - 8
        y: rule.folded ? first.y + first.height : 4
        onClicked: rule.switched()

        TapePaper {
            width: parent.width
            height: Math.max(52, tabWords.implicitHeight + 12)
            y: (rule.folded ? 0 : 6) + (parent.height - (rule.folded ? 0 : 6) - height) / 2
            key: rule.tabText
            color: tab.pressed ? Qt.darker(Theme.tape, 1.08) : Theme.tape
            crepe: Theme.tapeInk
            Accessible.ignored: true

            Column {
                id: tabWords
                anchors.centerIn: parent

                Words {
                    anchors.horizontalCenter: parent.horizontalCenter
                    text: rule.tabLead
                    mute: true
                    size: Theme.small
                    color: Theme.tapeInk
                    wrapMode: Text.NoWrap
                }
                Words {
                    anchors.horizontalCenter: parent.horizontalCenter
                    width: rule.folded ? Math.min(natural, tab.width - 16) : natural
                    horizontalAlignment: Text.AlignHCenter
                    text: rule.tabText
                    mute: true
                    bold: true
                    size: Theme.body
                    color: Theme.tapeInk
                    wrapMode: rule.folded ? Text.Wrap : Text.NoWrap
                }
            }
        }
    }
    FocusRing {
        anchors.margins: 1
        corner: 0
        shown: rule.activeFocus
    }
}
