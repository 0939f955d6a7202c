// Exposure: what was sampled, shift by shift; of the chosen shift its samples, the results against the
// limits that hold, and what was worn. exposure: the view model; wide: the shift in a pane right.
// Signal: whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens
import Jambline.Job

FocusScope {
    id: page

    required property ExposureViewModel exposure
    property string me: ""  // who taps
    property bool wide: false
    property real undoRoom: 0
    readonly property real actsTop: main.y
    readonly property real actsX: main.x
    readonly property real actsWidth: main.width
    readonly property bool beside: wide && exposure.shiftCount > 0
    readonly property real listWidth: beside ? Math.min(408, width * 0.4) : width
    implicitHeight: main.height + undoRoom + 260

    signal whoAsked

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Exposure")

    Flickable {
        id: view
        width: page.listWidth
        height: main.y - Theme.gap - page.undoRoom
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

            PaperCard {
                width: parent.width
                visible: page.exposure.shiftCount === 0
                dashed: true

                Item {
                    width: parent.width
                    height: Math.max(empty.height, 64)

                    Hatch {
                        width: 56
                        height: 56
                        anchors.verticalCenter: parent.verticalCenter
                    }
                    Words {
                        id: empty
                        x: 70
                        width: parent.width - x
                        anchors.verticalCenter: parent.verticalCenter
                        text: qsTr("No sample is entered. A laboratory's report of what somebody breathed goes here, sample by sample.")
                        color: Theme.pencil
                    }
                }
            }
            Item {
                id: below
                width: parent.width
                height: shift.height
                visible: !page.beside && page.exposure.shiftCount > 0
            }
            Words {
                width: parent.width
                visible: page.exposure.shiftCount > 0
                topPadding: 8
                text: qsTr("All shifts")
                bold: true
                color: Theme.pencil
                Accessible.role: Accessible.Heading
            }
            Repeater {
                model: page.exposure.shifts

                StandingCard {
                    required property int index
                    required property string key
                    required property string when
                    required property string spoken
                    required property bool isOpen
                    required title
                    required words
                    required shape

                    objectName: "shift" + index
                    width: body.width
                    pressable: true
                    chosen: isOpen
                    stateWords: when
                    name: spoken
                    onClicked: {
                        page.exposure.choose(key);
                        view.contentY = 0;
                    }
                }
            }
        }
    }
    Flickable {
        id: paneView
        visible: page.beside
        x: page.listWidth
        width: parent.width - x
        height: view.height
        contentHeight: pane.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Item {
            id: pane
            x: Theme.gap
            width: paneView.width - x - Theme.gutter
            height: shift.height + 2 * Theme.gap
        }
    }
    ShiftRows {
        id: shift
        parent: page.beside ? pane : below
        y: page.beside ? Theme.gap : 0
        width: parent.width
        visible: page.exposure.shift !== ""
        height: visible ? implicitHeight : 0
        exposure: page.exposure
        onSumAsked: sum.opened = true
        onTakeBackAsked: key => {
            taking.sample = key;
            taking.opened = true;
        }
    }
    SlabButton {
        id: main
        objectName: "logSample"
        x: (parent.width - width) / 2
        y: parent.height - height - Theme.gap
        width: Math.min(parent.width - 2 * Theme.gutter, page.wide ? 420 : parent.width)
        height: implicitHeight
        text: qsTr("Log a sample")
        secondLine: waits ? qsTr("say who you are first") : ""
        waits: !page.exposure.mayKeep
        onRefused: page.whoAsked()
        onClicked: typing.show(page.me)
    }
    SampleSheet {
        id: typing
        objectName: "sampleSheet"
        anchors.fill: parent
        exposure: page.exposure
    }
    Sheet {
        id: taking

        property string sample: ""

        objectName: "takeSampleBack"
        anchors.fill: parent
        title: qsTr("Take it back")

        Column {
            width: parent.width
            spacing: Theme.gap

            Words {
                width: parent.width
                text: qsTr("Why is this sample wrong? It stays in the log, taken back.")
                size: Theme.lead
            }
            Repeater {
                model: page.exposure.reasons

                PlainButton {
                    required property int index
                    required property string modelData

                    objectName: "takeSampleBack" + index
                    width: parent.width
                    height: implicitHeight
                    text: modelData
                    onClicked: {
                        page.exposure.takeBack(taking.sample, modelData);
                        taking.close();
                    }
                }
            }
        }
    }
    SumSheet {
        id: sum
        objectName: "exposureSum"
        anchors.fill: parent
        sum: page.exposure.sum
    }
}
