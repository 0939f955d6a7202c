// FirstAid: over everything, from every screen with one tap. Five choices, then the steps in plain
// words. It stops no clock; Close goes back to where one was. log: writes that a choice was opened,
// once as long as the page is open, and lets who taps say of himself "do not spray"; without it
// nothing is written.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: aid

    property bool opened: false
    property int chosen: -1
    property FirstAidViewModel log: null
    property bool flagging: false
    readonly property var choice: chosen >= 0 ? texts.choices[chosen] : null

    signal closed

    function open() {
        chosen = -1;
        flagging = false;
        opened = true;
        page.contentY = 0;
        log?.pageOpened();
        closer.forceActiveFocus();
    }

    function close() {
        if (!opened)
            return;
        opened = false;
        closed();
    }

    function back() {
        if (chosen >= 0)
            chosen = -1;
        else
            close();
    }

    visible: opened
    z: 60
    Accessible.role: Accessible.Dialog
    Accessible.name: qsTr("First aid")
    Keys.onEscapePressed: back()
    Keys.onBackPressed: back()

    Cautions {
        id: texts
    }
    Rectangle {
        anchors.fill: parent
        color: Theme.paper

        MouseArea {
            anchors.fill: parent
        }
    }
    Item {
        id: top
        x: Theme.gutter
        y: Theme.gutter
        width: parent.width - 2 * Theme.gutter
        height: Math.max(title.implicitHeight, closer.implicitHeight)

        Words {
            id: title
            anchors.verticalCenter: parent.verticalCenter
            width: parent.width - closer.width - 12
            text: aid.choice ? aid.choice.title : qsTr("First aid")
            bold: true
            size: aid.choice ? Theme.screen : Theme.place
            Accessible.role: Accessible.Heading
        }
        PlainButton {
            id: closer
            objectName: "firstAidClose"
            anchors.right: parent.right
            height: Math.max(Theme.touch, implicitHeight)
            width: Math.max(96, implicitWidth)
            text: qsTr("Close")
            onClicked: aid.close()
        }
    }
    Flickable {
        id: page
        x: top.x
        y: top.y + top.height + 12
        width: top.width
        height: parent.height - y - (foot.visible ? foot.height + 16 : 0)
        contentHeight: stack.height + Theme.gutter
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds
        clip: interactive

        Column {
            id: stack
            width: Math.min(parent.width, 720)
            spacing: 10

            Repeater {
                model: aid.choice ? [] : texts.choices

                PlainButton {
                    required property int index
                    required property var modelData

                    objectName: "firstAidChoice" + index
                    width: stack.width
                    height: Math.max(96, implicitHeight)
                    beside: true
                    text: modelData.title
                    iconName: modelData.icon
                    textSize: Theme.lead
                    onClicked: {
                        aid.chosen = index;
                        page.contentY = 0;
                        aid.log?.open(index);
                    }
                }
            }
            Repeater {
                model: aid.choice ? aid.choice.steps : []

                PaperCard {
                    id: step

                    required property int index
                    required property string modelData

                    width: stack.width
                    height: implicitHeight
                    name: qsTr("%1. %2").arg(index + 1).arg(modelData)

                    Item {
                        width: parent.width
                        height: Math.max(32, line.height)

                        Words {
                            width: 28
                            text: String(step.index + 1)
                            mute: true
                            bold: true
                            size: Theme.title
                        }
                        Words {
                            id: line
                            x: 36
                            width: parent.width - x
                            anchors.verticalCenter: parent.verticalCenter
                            text: step.modelData
                            mute: true
                            size: Theme.lead
                        }
                    }
                }
            }
            Words {
                width: stack.width
                visible: text !== ""
                text: aid.choice ? aid.choice.after : ""
                bold: true
            }
            PlainButton {
                objectName: "firstAidFlag"
                width: stack.width
                height: implicitHeight
                visible: aid.log !== null && aid.log.mayFlag && aid.log.asksFlag(aid.chosen)
                pressable: visible
                text: aid.log?.flagWords ?? ""
                secondLine: aid.flagging ? qsTr("tap once more to say it; only a manager takes it back")
                                         : qsTr("stops before the gun until a manager takes it back; nothing of why is kept")
                chosen: aid.flagging
                onClicked: {
                    if (aid.flagging)
                        aid.log.flag();
                    aid.flagging = !aid.flagging;
                }
            }
            Words {
                width: stack.width
                visible: aid.choice !== null
                text: texts.sheetLine
            }
            Words {
                objectName: "firstAidWritten"
                width: stack.width
                visible: text !== ""
                text: aid.choice ? aid.log?.writtenWords ?? "" : ""
                size: Theme.note
                color: Theme.pencil
            }
            Words {
                width: stack.width
                text: texts.sources
                size: Theme.note
                color: Theme.pencil
            }
        }
    }
    PaperCard {
        id: foot
        visible: aid.choice !== null && aid.choice.call
        x: top.x
        width: top.width
        height: implicitHeight
        y: parent.height - height - 12
        must: true
        name: texts.number

        Item {
            width: parent.width
            height: Math.max(40, call.height)

            Icon {
                anchors.verticalCenter: parent.verticalCenter
                source: "phone"
                size: 32
                color: Theme.oxide
            }
            Words {
                id: call
                x: 48
                width: parent.width - x
                anchors.verticalCenter: parent.verticalCenter
                text: texts.number
                mute: true
                bold: true
                size: Theme.title
            }
        }
    }
}
