// Operations: the work of a car: who did what in how many hours, what came on top and what was said to
// it; supplements, redo and comeback apart. operations: the view model; store: its pictures; wide: the
// acts in a pane right. Signals: photoAsked(stage), whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property OperationsViewModel operations
    property PictureStore store: null
    property bool wide: false
    property real undoRoom: 0  // kept free above the acts
    readonly property real actsTop: main.visible ? main.y : height
    readonly property real actsX: main.x
    readonly property real actsWidth: main.width
    readonly property real paneWidth: wide ? 376 : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth
    implicitHeight: main.height + undoRoom + 200

    signal photoAsked(string stage)

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Work")
    // A picture was taken meanwhile: what was typed stands there again.
    Component.onCompleted: if (operations.adding) more.opened = true

    Flickable {
        id: view
        width: page.wide ? page.paneX : parent.width
        height: page.wide ? parent.height : page.actsTop - Theme.gap - page.undoRoom
        contentHeight: body.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: body
            x: Theme.gutter
            width: view.width - 2 * Theme.gutter
            topPadding: Theme.gap
            bottomPadding: Theme.gap
            spacing: Theme.gap

            Item {
                id: above
                visible: !page.wide
                width: parent.width
                height: visible ? facts.height : 0
            }
            EmptyCard {
                width: parent.width
                visible: page.operations.count === 0
                words: qsTr("No work is planned for this car yet.")
            }
            Repeater {
                model: page.operations.rows

                Column {
                    id: line

                    required property int index
                    required property string key
                    required property string heading
                    required property string title
                    required property string stage
                    required property string hours
                    required property string stands
                    required property int shape
                    required property string why
                    required property string file
                    required property bool isOpen
                    required property string missing
                    required property bool canFinish
                    required property bool canReopen
                    required property bool canAsk
                    required property bool canAnswer

                    width: body.width
                    spacing: Theme.gap

                    Words {
                        width: parent.width
                        visible: text !== ""
                        topPadding: 8
                        text: line.heading
                        bold: true
                        color: Theme.pencil
                        Accessible.role: Accessible.Heading
                    }
                    OperationCard {
                        objectName: "operation" + line.index
                        width: parent.width
                        key: line.key
                        title: line.title
                        stage: line.stage
                        hours: line.hours
                        stands: line.stands
                        shape: line.shape
                        why: line.why
                        file: line.file
                        isOpen: line.isOpen
                        missing: line.missing
                        canFinish: line.canFinish
                        canReopen: line.canReopen
                        canAsk: line.canAsk
                        canAnswer: line.canAnswer
                        store: page.store
                        onOpened: page.operations.open(line.key)
                        onFinished: page.operations.finish(line.key)
                        onReopened: page.operations.reopen(line.key)
                        onApprovalAsked: page.operations.askApproval(line.key)
                        onAnswered: given => page.operations.answer(line.key, given)
                    }
                }
            }
        }
    }
    Column {
        id: facts
        parent: page.wide ? page : above
        x: page.wide ? page.paneX : 0
        width: page.wide ? page.paneWidth : parent.width
        topPadding: page.wide ? Theme.gap : 0
        spacing: Theme.gap

        Words {
            width: parent.width
            text: qsTr("Work")
            bold: true
            size: Theme.screen
            Accessible.role: Accessible.Heading
        }
        Words {
            objectName: "operationSum"
            width: parent.width
            visible: page.operations.count > 0
            text: page.operations.sumWords
            color: Theme.pencil
        }
    }
    SlabButton {
        id: main
        objectName: "operationsMain"
        x: page.paneX
        width: page.paneWidth
        height: implicitHeight
        y: parent.height - height - Theme.gap
        visible: page.operations.writable
        pressable: visible
        text: qsTr("Add work")
        secondLine: qsTr("usual, supplement or redo")
        onClicked: more.show()
    }
    OperationSheet {
        id: more
        anchors.fill: parent
        operations: page.operations
        store: page.store
        onPhotoAsked: stage => page.photoAsked(stage)
    }
}
