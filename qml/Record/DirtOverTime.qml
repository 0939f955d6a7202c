// DirtOverTime: how much dirt fell on the cars, and what events at the booth changed: the question
// as a sentence, the answer, the chart, rows that open. A chosen point opens its car.
// dirt: the view model; wide: rows beside the chart. Signals: carAsked(jobId), floorAsked,
// boothsAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Job
import Jambline.Screens

FocusScope {
    id: page

    required property DirtOverTimeViewModel dirt
    property bool wide: false
    property real undoRoom: 0  // kept free at the foot
    readonly property bool desk: width >= 1200
    readonly property real actsTop: open.visible ? open.y : height
    readonly property real actsX: Theme.gutter
    readonly property real actsWidth: open.width
    readonly property bool shown: dirt.state === DirtOverTimeViewModel.Shown
    readonly property real room: open.visible ? height - open.y + Theme.gap : Theme.gutter
    readonly property real ring: 6  // room for the outline of what has the focus
    readonly property real leftWidth: wide ? Math.round((width - 3 * Theme.gutter) * 0.58) : width - 2 * Theme.gutter

    signal carAsked(string jobId)
    signal floorAsked
    signal boothsAsked

    function ask(key: string) {
        choices.key = key;
        choices.choices = page.dirt.choices(key);
        choices.current = page.dirt.choiceOf(key);
        choices.opened = true;
    }

    Component.onCompleted: dirt.wake()
    Component.onDestruction: dirt.rest()

    Flickable {
        id: sight
        objectName: "dirtPage"
        x: Theme.gutter - page.ring
        width: page.leftWidth + 2 * page.ring
        height: page.height - page.room - page.undoRoom
        contentWidth: width
        contentHeight: left.height + (page.wide || !page.shown ? 0 : rows.height + Theme.gutter)
        clip: true
        boundsBehavior: Flickable.StopAtBounds
        interactive: contentHeight > height

        Column {
            id: left
            x: page.ring
            width: page.leftWidth
            spacing: Theme.gap

            SentenceFilter {
                objectName: "dirtQuestion"
                width: parent.width
                parts: page.dirt.question
                openKey: choices.opened ? choices.key : ""
                onWordPressed: key => page.ask(key)
            }
            DirtChart {
                width: parent.width
                visible: page.shown
                dirt: page.dirt
                desk: page.desk
                room: page.wide ? sight.height - y : 0
                onCarAsked: jobId => page.carAsked(jobId)
            }
            PaperCard {
                objectName: "dirtEmpty"
                width: parent.width
                visible: !page.shown
                dashed: true

                Column {
                    width: parent.width
                    spacing: Theme.gap

                    Hatch {
                        width: parent.width
                        height: 160
                        radius: Theme.corner
                    }
                    Words {
                        width: parent.width
                        text: page.dirt.state === DirtOverTimeViewModel.Waiting ? qsTr("The cars are being read.")
                            : page.dirt.state === DirtOverTimeViewModel.NoCars
                                ? qsTr("No car was looked over to the end yet. Each one then stands here as a point.")
                            : page.dirt.state === DirtOverTimeViewModel.NothingFits ? qsTr("No car fits this question.")
                                                                                   : page.dirt.trouble
                    }
                    PlainButton {
                        objectName: "dirtToFloor"
                        width: Math.min(parent.width, Math.max(200, implicitWidth))
                        height: implicitHeight
                        visible: page.dirt.state === DirtOverTimeViewModel.NoCars
                        pressable: visible
                        text: qsTr("To the cars on the floor")
                        onClicked: page.floorAsked()
                    }
                    PlainButton {
                        objectName: "dirtAskAll"
                        width: Math.min(parent.width, Math.max(200, implicitWidth))
                        height: implicitHeight
                        visible: page.dirt.state === DirtOverTimeViewModel.NothingFits
                        pressable: visible
                        text: qsTr("All cars of all time")
                        onClicked: page.dirt.askAll()
                    }
                }
            }
        }
    }
    Flickable {
        id: beside
        objectName: "dirtRows"
        x: page.leftWidth + 2 * Theme.gutter - page.ring
        width: page.width - x - Theme.gutter + page.ring
        height: sight.height
        visible: page.wide && page.shown
        contentWidth: width
        contentHeight: rows.height
        clip: true
        boundsBehavior: Flickable.StopAtBounds
        interactive: contentHeight > height
    }
    DirtRows {
        id: rows
        parent: page.wide ? beside.contentItem : sight.contentItem
        x: page.ring
        y: page.wide ? 0 : left.height + Theme.gutter
        width: page.wide ? beside.width - 2 * page.ring : page.leftWidth
        visible: page.shown
        dirt: page.dirt
        onBoothsAsked: page.boothsAsked()
        onSumAsked: {
            page.dirt.openSum();
            sum.opened = true;
        }
    }
    SlabButton {
        id: open
        objectName: "dirtOpenCar"
        x: Theme.gutter
        y: parent.height - height - Theme.gap
        width: page.leftWidth
        height: implicitHeight
        visible: page.shown && page.dirt.chosen >= 0
        text: qsTr("Open %1").arg(page.dirt.chosenPlate)
        secondLine: page.wide ? "" : page.dirt.chosenWords
        onClicked: page.carAsked(page.dirt.chosenJob)
    }
    ChoiceSheet {
        id: choices

        property string key: ""

        objectName: "dirtChoices"
        anchors.fill: parent
        side: page.wide
        title: key === "booth" ? qsTr("Which booth?") : key === "since" ? qsTr("Since when?") : qsTr("Sprayed by whom?")
        onChose: row => page.dirt.answerWith(key, row)
    }
    SumSheet {
        id: sum
        objectName: "dirtSum"
        anchors.fill: parent
        side: page.wide
        sum: page.dirt.sum
    }
}
