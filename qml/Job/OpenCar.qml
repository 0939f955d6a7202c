// OpenCar: the form of a new car. On the phone one page a question with Next always at the same
// spot; wide: all on one page. form: the view model. Signals: opened(jobId), dropped (the draft
// stays).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Item {
    id: page

    required property OpenCarViewModel form
    property bool wide: false
    implicitHeight: acts.height + undoRoom + 176
    property real undoRoom: 0  // kept free above the acts
    readonly property real actsTop: acts.y
    readonly property real actsX: wide ? acts.x + main.x : acts.x
    readonly property real actsWidth: main.width
    // Large words: the row of other acts goes with the body, the main act stays where it is.
    readonly property bool tall: Theme.textScale > 1.2 && !wide

    readonly property bool last: wide || form.page === OpenCarViewModel.PromisePage
    readonly property string stop: last ? form.openWaitsFor : form.waitsFor

    signal opened(string jobId)
    signal dropped

    component Step: Column {
        id: section

        property int number: 0
        property string title: ""

        width: parent ? parent.width : 0
        visible: page.wide || page.form.page === number
        spacing: Theme.gap

        Words {
            width: section.width
            text: section.title
            bold: true
            size: page.wide ? Theme.lead : Theme.title
            Accessible.role: Accessible.Heading
        }
    }

    Connections {
        target: page.form
        function onOpened(jobId) {
            page.opened(jobId);
        }
        function onChanged() {
            view.settle();
        }
    }

    Flickable {
        id: view

        property int shown: -1

        function settle() {
            if (shown !== page.form.page && !page.wide)
                contentY = 0;
            shown = page.form.page;
        }

        width: parent.width
        height: acts.y - Theme.gap - page.undoRoom
        contentHeight: body.height + tail.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Grid {
            id: body
            x: Theme.gutter
            width: view.width - 2 * Theme.gutter
            topPadding: Theme.gap
            bottomPadding: Theme.gutter
            columns: page.wide && width > 720 * Theme.textScale ? 2 : 1
            columnSpacing: Theme.gutter * 2
            rowSpacing: page.wide ? Theme.gutter : 0

            readonly property real share: (width - (columns - 1) * columnSpacing) / columns

            Column {
                width: body.share
                spacing: page.wide ? Theme.gutter : 0

                Step {
                    number: OpenCarViewModel.CarPage
                    title: qsTr("Which car")

                    OpenCarStepCar {
                        width: parent.width
                        form: page.form
                        onAnswered: if (!page.wide) page.form.next()
                        onScanAsked: scan.opened = true
                    }
                }
                Step {
                    number: OpenCarViewModel.ColorPage
                    title: qsTr("Color")

                    OpenCarStepColor {
                        width: parent.width
                        form: page.form
                        onAnswered: if (!page.wide) page.form.next()
                    }
                }
                Step {
                    number: OpenCarViewModel.BodyPage
                    title: qsTr("Body")

                    OpenCarStepBody {
                        width: parent.width
                        form: page.form
                        goOn: !page.wide
                    }
                }
                Step {
                    number: OpenCarViewModel.WorkPage
                    title: qsTr("Work")

                    OpenCarStepWork {
                        width: parent.width
                        form: page.form
                        goOn: !page.wide
                    }
                }
            }
            Column {
                width: body.share
                spacing: page.wide ? Theme.gutter : 0

                Step {
                    number: OpenCarViewModel.PromisePage
                    title: qsTr("Promised")

                    OpenCarStepPromise {
                        width: parent.width
                        form: page.form
                    }
                }
                Step {
                    number: OpenCarViewModel.PanelsPage
                    title: qsTr("Panels and hours")

                    OpenCarStepPanels {
                        width: parent.width
                        form: page.form
                        wide: page.wide
                    }
                }
            }
        }

        Item {
            id: tail
            x: Theme.gutter
            y: body.height
            width: acts.width
            height: page.tall ? row.height + Theme.gap : 0
            visible: page.tall
        }
    }

    ActRow {
        id: row
        parent: page.tall ? tail : spot
        width: acts.share
        height: page.wide ? spot.height : implicitHeight

        PlainButton {
            objectName: "openBack"
            visible: !page.wide && page.form.page > 0
            pressable: visible
            text: qsTr("Back")
            onClicked: page.form.back()
        }
        PlainButton {
            objectName: "openPanels"
            visible: !page.wide && page.form.page === OpenCarViewModel.PromisePage
            pressable: visible
            text: qsTr("Panels")
            secondLine: qsTr("%1, %2").arg(page.form.panelCount).arg(page.form.hoursSum)
            beside: false
            onClicked: page.form.goTo(OpenCarViewModel.PanelsPage)
        }
        PlainButton {
            objectName: "openLater"
            text: qsTr("Later")
            secondLine: qsTr("stays as typed")
            beside: false
            onClicked: page.dropped()
        }
        PlainButton {
            objectName: "openEmpty"
            visible: page.wide
            pressable: visible
            text: qsTr("Empty the form")
            onClicked: page.form.clear()
        }
    }

    // Wide: one line, the main act at its right end.
    Grid {
        id: acts
        x: Theme.gutter
        width: parent.width - 2 * Theme.gutter
        y: parent.height - height - Theme.gap
        columns: page.wide ? 2 : 1
        columnSpacing: Theme.gutter * 2
        rowSpacing: Theme.gap

        readonly property real share: (width - (columns - 1) * columnSpacing) / columns

        Item {
            id: spot
            width: acts.share
            height: page.tall ? 0 : page.wide ? Math.max(row.implicitHeight, main.implicitHeight) : row.height
            visible: !page.tall
        }
        SlabButton {
            id: main
            objectName: "openMain"
            width: acts.share
            height: page.wide ? spot.height : implicitHeight
            text: !page.last ? qsTr("Next") : page.form.plate === "" ? qsTr("Open") : qsTr("Open %1").arg(page.form.plate)
            secondLine: page.stop !== "" ? page.stop : page.last ? page.form.summary : ""
            waits: page.stop !== "" || page.form.opening
            onClicked: page.last ? page.form.open() : page.form.next()
        }
    }

    VinScan {
        id: scan
        objectName: "vinScan"
        anchors.fill: parent
        scan: page.form.scan
    }
}
