// Wall: all pictures of the car on the tape, by stage; which ones is a sentence. wall: the view model;
// wide: more of them side by side. Signals: lookAsked(picture, among), shotsAsked: take the next.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property WallViewModel wall
    property bool wide: false
    property real undoRoom: 0  // kept free above the main act
    readonly property real actsTop: main.y
    readonly property real actsX: main.x
    readonly property real actsWidth: main.width
    readonly property real room: width - 2 * Theme.gutter
    readonly property int columns: Math.max(2, Math.floor((room + Theme.gap) / ((wide ? 172 : 118) * Theme.textScale + Theme.gap)))

    implicitHeight: question.height + 240 + main.height + 4 * Theme.gap + undoRoom

    signal lookAsked(string picture, var among)
    signal shotsAsked

    function ask(key: string) {
        choices.key = key;
        choices.choices = wall.choices(key);
        choices.current = wall.choiceOf(key);
        choices.opened = true;
    }

    Component.onCompleted: {
        wall.columns = columns;
        list.positionViewAtIndex(wall.place, ListView.Beginning);
    }
    Component.onDestruction: wall.place = Math.max(0, list.indexAt(1, list.contentY + 1))
    onColumnsChanged: wall.columns = columns

    SentenceFilter {
        id: question
        objectName: "wallQuestion"
        x: Theme.gutter
        width: page.room
        visible: !page.wall.empty
        height: visible ? implicitHeight : 0
        parts: page.wall.question
        openKey: choices.opened ? choices.key : ""
        tail: page.wide ? page.wall.countWords : ""
        onWordPressed: key => page.ask(key)
    }
    ListView {
        id: list
        objectName: "wallList"
        visible: page.wall.pictures > 0
        focus: true
        x: Theme.gutter
        width: page.room
        anchors { top: question.bottom; topMargin: 4; bottom: parent.bottom; bottomMargin: page.height - main.y + Theme.gap + page.undoRoom }
        clip: true
        reuseItems: true
        cacheBuffer: 200
        spacing: Theme.gap
        boundsBehavior: Flickable.StopAtBounds
        model: page.wall
        delegate: Item {
            id: line

            required property int index
            required property string heading
            required property var cells

            width: list.width
            height: heading !== "" ? title.height : pictures.height

            Words {
                id: title
                visible: line.heading !== ""
                width: parent.width
                topPadding: 8
                text: line.heading
                bold: true
                size: Theme.lead
                Accessible.role: Accessible.Heading
            }
            Row {
                id: pictures
                visible: line.heading === ""
                spacing: Theme.gap

                Repeater {
                    model: page.columns

                    WallCell {
                        required property int index

                        visible: index < line.cells.length
                        pressable: visible
                        width: (list.width - (page.columns - 1) * Theme.gap) / page.columns
                        height: implicitHeight
                        store: page.wall.store
                        shown: visible ? line.cells[index] : ({})
                        onActiveFocusChanged: if (activeFocus)
                            list.positionViewAtIndex(line.index, ListView.Contain)
                        onClicked: page.lookAsked(shown.picture, page.wall.keys())
                    }
                }
            }
        }
        Accessible.role: Accessible.List
        Accessible.name: page.wall.countWords
    }
    PaperCard {
        objectName: "wallEmpty"
        visible: page.wall.pictures === 0
        x: Theme.gutter
        y: question.height + Theme.gap
        width: Math.min(page.room, 720)
        dashed: true

        Column {
            width: parent.width
            spacing: 12

            Row {
                id: places
                spacing: Theme.gap

                Repeater {
                    model: 3

                    Hatch {
                        width: (places.parent.width - 2 * Theme.gap) / 3
                        height: width * 0.8
                        radius: Theme.corner
                    }
                }
            }
            Words {
                width: parent.width
                text: page.wall.empty ? qsTr("No pictures of this car yet. What is taken or brought in from files stands here by stage.")
                                      : qsTr("No picture of this stage and panel.")
            }
            PlainButton {
                objectName: "wallAskAll"
                visible: !page.wall.empty
                pressable: visible
                width: Math.min(parent.width, Math.max(200, implicitWidth))
                height: implicitHeight
                text: qsTr("All pictures of this car")
                onClicked: page.wall.askAll()
            }
        }
    }
    SlabButton {
        id: main
        objectName: "wallMain"
        x: page.wide ? parent.width - width - Theme.gutter : Theme.gutter
        width: page.wide ? 376 : page.room
        height: implicitHeight
        y: parent.height - height - Theme.gap
        text: qsTr("Take pictures")
        secondLine: page.wide || page.wall.empty ? "" : page.wall.countWords
        onClicked: page.shotsAsked()
    }
    ChoiceSheet {
        id: choices

        property string key: ""

        anchors.fill: parent
        title: key === "stage" ? qsTr("Which stage") : qsTr("Which panel")
        onChose: row => page.wall.answerWith(key, row)
    }
}
