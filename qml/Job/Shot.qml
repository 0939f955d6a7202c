// Shot: one picture after another, each judged at once. shot: the view model; wide: the view left,
// words and acts in a pane right. Signal: finished: nothing is missing any more. The camera is on only
// while this is in front.
pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Window
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property ShotViewModel shot
    property bool wide: false
    property real undoRoom: 0  // kept free above the acts
    readonly property real actsTop: acts.y
    readonly property real actsX: acts.x
    readonly property real actsWidth: acts.width
    readonly property real paneWidth: wide ? 376 : width - 2 * Theme.gutter
    readonly property bool inFront: visible && (Window.window?.visible ?? false) && Window.visibility !== Window.Minimized
                                    && Qt.application.state !== Qt.ApplicationSuspended && Qt.application.state !== Qt.ApplicationHidden
    readonly property bool waits: shot.step === ShotViewModel.Poor || shot.step === ShotViewModel.Offered || shot.step === ShotViewModel.Unsaved
    readonly property bool still: shot.step === ShotViewModel.Edges || shot.step === ShotViewModel.Offered || shot.step === ShotViewModel.Unsaved
    // On a phone a picture that waits for its answer has the whole screen: the main act is in sight.
    readonly property bool undoAway: waits && !wide
    readonly property bool troubled: shot.troubleWhat !== "" && !still && !waits

    implicitHeight: head.height + acts.height + undoRoom + 260

    signal finished

    onInFrontChanged: shot.front = inFront
    Component.onCompleted: shot.front = inFront
    Component.onDestruction: shot.front = false
    Keys.onPressed: event => {
        const shutter = event.key === Qt.Key_Camera || event.key === Qt.Key_VolumeUp || event.key === Qt.Key_VolumeDown;
        event.accepted = shutter || event.key === Qt.Key_Space || event.key === Qt.Key_Return;
        if (event.accepted && !event.isAutoRepeat)
            page.shot.act();
    }

    Connections {
        target: page.shot
        function onFilesAsked() { files.ask(); }
        function onFinished() { page.finished(); }
    }
    PictureFiles {
        id: files
        onChosen: urls => page.shot.offer(urls)
        onFolderChosen: folder => page.shot.watch(folder)
    }
    DropArea {
        anchors.fill: parent
        onDropped: drop => {
            if (drop.hasUrls)
                page.shot.offer(drop.urls);
        }
    }

    Item {
        id: head
        x: page.wide ? acts.x : Theme.gutter
        y: page.wide ? Theme.gap : 0
        width: page.paneWidth
        height: Math.max(name.implicitHeight, count.implicitHeight) + (stand.visible ? stand.height + 2 : 0) + Theme.gap

        Words {
            id: name
            objectName: "shotTitle"
            width: parent.width - (count.visible ? count.width + 12 : 0)
            text: page.shot.title
            bold: true
            size: Theme.title
            Accessible.role: Accessible.Heading
        }
        Words {
            id: count
            objectName: "shotCount"
            anchors.right: parent.right
            width: natural
            visible: text !== ""
            text: page.shot.countWords
            size: Theme.lead
            color: Theme.pencil
        }
        Words {
            id: stand
            y: Math.max(name.height, count.height) + 2
            width: parent.width
            visible: text !== "" && !page.waits
            text: page.shot.stand
            color: Theme.pencil
        }
    }
    Item {
        id: frame
        x: page.wide ? Theme.gutter : 0
        y: page.wide ? Theme.gap : head.height
        width: page.wide ? acts.x - 2 * Theme.gutter : parent.width
        height: (page.wide ? parent.height - Theme.gap : acts.y - page.undoRoom) - y - Theme.gap
        clip: true

        Rectangle {
            anchors.fill: parent
            color: Theme.steel
            visible: !page.troubled
        }
        ShotLiveItem {
            objectName: "shotLive"
            anchors.fill: parent
            visible: page.shot.live && !page.still
            shot: page.shot
        }
        ShotStillItem {
            anchors.fill: parent
            visible: page.still
            shot: page.shot
        }
        Rectangle {
            visible: page.shot.live && !page.still && page.shot.ghostWords !== ""
            x: 12
            y: 12
            width: dashes.width + 20
            height: dashes.height + 12
            radius: Theme.corner
            color: Theme.paper

            Words {
                id: dashes
                anchors.centerIn: parent
                width: Math.min(natural, frame.width - 44)
                text: page.shot.ghostWords
            }
        }
        Rectangle {
            visible: !page.troubled && !page.still && page.shot.view >= 0
            anchors { right: parent.right; bottom: parent.bottom; margins: 12 }
            width: 84
            height: 84
            radius: Theme.corner
            color: Theme.paper
            border.width: Theme.line
            border.color: Theme.edge

            ShotDrawing {
                anchors { fill: parent; margins: 6 }
                view: page.shot.view
            }
        }
        Rectangle {
            visible: page.shot.step === ShotViewModel.Poor
            anchors { left: parent.left; bottom: parent.bottom; margins: 12 }
            width: 128
            height: 96
            color: Theme.paper
            border.width: Theme.line
            border.color: Theme.edge

            ShotStillItem {
                anchors { fill: parent; margins: 2 }
                shot: page.shot
            }
        }
        Flickable {
            id: trouble
            visible: page.troubled
            anchors { fill: parent; leftMargin: page.wide ? 0 : Theme.gutter; rightMargin: page.wide ? 0 : Theme.gutter }
            contentHeight: why.height
            interactive: contentHeight > height
            boundsBehavior: Flickable.StopAtBounds
            clip: true

            ShotTrouble {
                id: why
                width: trouble.width
                shot: page.shot
                onFolderAsked: files.askFolder()
            }
        }
    }
    Column {
        id: acts
        x: page.wide ? parent.width - width - Theme.gutter : Theme.gutter
        width: page.paneWidth
        y: parent.height - height - Theme.gap
        spacing: Theme.gap

        ImportCard {
            width: parent.width
            brief: true
            intake: page.shot.intake
        }
        PaperCard {
            objectName: "shotNotice"
            width: parent.width
            visible: page.shot.noticeWhat !== "" && page.shot.step === ShotViewModel.Aim
            name: words.text
            must: true

            Words {
                id: words
                width: parent.width
                text: qsTr("%1 %2").arg(page.shot.noticeWhat).arg(page.shot.noticeTodo)
                mute: true
            }
        }
        ShotJudged {
            width: parent.width
            visible: page.waits
            shot: page.shot
        }
        EdgeChips {
            width: parent.width
            visible: page.shot.step === ShotViewModel.Edges
            shot: page.shot
        }
        PaperCard {
            width: parent.width
            visible: page.shot.watching && page.shot.step === ShotViewModel.Aim
            name: page.shot.watchWords

            Column {
                width: parent.width
                spacing: Theme.gap

                Words {
                    objectName: "shotWatchWords"
                    width: parent.width
                    text: page.shot.watchWords
                    mute: true
                    wrapMode: Text.WrapAtWordBoundaryOrAnywhere
                }
                ActRow {
                    width: parent.width

                    PlainButton {
                        objectName: "shotOfferAll"
                        text: qsTr("Offer what it has")
                        onClicked: page.shot.offerAll()
                    }
                    PlainButton {
                        objectName: "shotWatchStop"
                        text: qsTr("Stop watching")
                        onClicked: page.shot.stopWatching()
                    }
                }
            }
        }
        ActRow {
            width: parent.width
            visible: page.shot.step !== ShotViewModel.Edges && page.shot.step !== ShotViewModel.Busy

            PlainButton {
                objectName: "shotSkip"
                visible: page.shot.step === ShotViewModel.Aim && page.shot.countWords !== ""
                pressable: visible
                text: qsTr("Skip")
                secondLine: qsTr("it stays missing")
                beside: false
                onClicked: page.shot.skip()
            }
            PlainButton {
                objectName: "shotFiles"
                visible: page.shot.step === ShotViewModel.Aim && page.shot.mainAct !== ShotViewModel.Files
                pressable: visible
                text: qsTr("From files")
                secondLine: Theme.desk ? qsTr("or drop them here") : qsTr("of this device")
                beside: false
                onClicked: files.ask()
            }
            PlainButton {
                objectName: "shotKeepAnyway"
                visible: page.waits && page.shot.step !== ShotViewModel.Unsaved && !page.shot.judgedGood
                pressable: visible
                text: qsTr("Keep it anyway")
                secondLine: qsTr("marked poor")
                beside: false
                onClicked: page.shot.keepAnyway()
            }
            PlainButton {
                objectName: "shotDrop"
                visible: page.shot.step === ShotViewModel.Unsaved || page.shot.mainAct === ShotViewModel.Keep
                pressable: visible
                text: page.shot.step === ShotViewModel.Unsaved ? qsTr("Drop it") : qsTr("Leave it")
                beside: false
                onClicked: page.shot.drop()
            }
            PlainButton {
                objectName: "shotKeepAll"
                visible: page.shot.step === ShotViewModel.Offered && page.shot.offerCount > 1
                pressable: visible
                text: qsTr("Keep all %1").arg(page.shot.offerCount)
                secondLine: qsTr("of this shot")
                beside: false
                onClicked: page.shot.keepAllOffered()
            }
        }
        SlabButton {
            objectName: "shotMain"
            width: parent.width
            height: Math.max(implicitHeight, page.wide ? 0 : 88)
            text: page.shot.mainText
            secondLine: page.shot.mainSecond
            waits: page.shot.mainAct === ShotViewModel.Wait
            onClicked: page.shot.act()
        }
    }
}
