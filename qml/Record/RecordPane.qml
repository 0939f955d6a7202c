// RecordPane: the chosen car beside the list of the record: when, hours, what was passed over, what is
// open, what held it, what was said last. car: the view model. Signals: carAsked;
// historyAsked(entryId): "" where it ends.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: pane

    required property RecordCarViewModel car
    readonly property real ring: 6

    signal carAsked
    signal historyAsked(string entryId)

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Chosen car")

    component Title: Words {
        width: parent.width
        topPadding: 6
        bold: true
        Accessible.role: Accessible.Heading
    }

    Words {
        visible: !pane.car.loaded
        width: parent.width
        text: qsTr("The car is being read.")
        color: Theme.pencil
    }
    Flickable {
        id: sight
        x: -pane.ring
        width: parent.width + 2 * pane.ring
        height: acts.y - Theme.gap
        visible: pane.car.loaded
        contentWidth: width
        contentHeight: column.height + 2 * pane.ring
        clip: true
        boundsBehavior: Flickable.StopAtBounds
        interactive: contentHeight > height

        Column {
            id: column
            x: pane.ring
            y: pane.ring
            width: pane.width
            spacing: Theme.gap

            Item {
                width: parent.width
                height: Math.max(tape.height, due.height)

                TapeLabel {
                    id: tape
                    objectName: "paneTape"
                    width: Math.min(implicitWidth, parent.width - due.width - 12)
                    text: pane.car.plate
                    key: pane.car.job
                    pressable: false
                }
                Words {
                    id: due
                    objectName: "paneDue"
                    anchors.right: parent.right
                    anchors.verticalCenter: parent.verticalCenter
                    width: Math.min(natural, parent.width / 2)
                    horizontalAlignment: Text.AlignRight
                    text: pane.car.dueWords
                    bold: true
                    size: Theme.lead
                    color: pane.car.late ? Theme.oxide : Theme.ink
                }
            }
            Words {
                width: parent.width
                text: pane.car.look
            }
            Title {
                visible: pane.car.heldCount > 0
                text: qsTr("What held it")
            }
            Repeater {
                model: pane.car.held

                DetailLine {
                    width: column.width
                }
            }
            Title {
                visible: pane.car.overrideCount > 0
                text: qsTr("Passed over")
            }
            Repeater {
                model: pane.car.overrides

                PaneEntry {
                    objectName: "paneOverride"
                    width: column.width
                    must: true
                    onClicked: pane.historyAsked(entry)
                }
            }
            Title {
                visible: pane.car.open.length > 0
                text: qsTr("Still open")
            }
            Repeater {
                model: pane.car.open

                Words {
                    required property string modelData
                    width: column.width
                    text: modelData
                }
            }
            Title {
                text: qsTr("Hours")
            }
            Words {
                width: parent.width
                text: pane.car.hoursWords
            }
            Repeater {
                model: pane.car.stages

                PaneStage {
                    width: column.width
                }
            }
            Title {
                text: qsTr("When")
            }
            Repeater {
                model: pane.car.facts

                DetailLine {
                    width: column.width
                }
            }
            Title {
                text: qsTr("Said last")
            }
            Repeater {
                model: pane.car.last

                PaneEntry {
                    objectName: "paneEntry"
                    width: column.width
                    onClicked: pane.historyAsked(entry)
                }
            }
        }
    }
    Row {
        id: acts
        y: parent.height - height
        width: parent.width
        spacing: Theme.gap
        visible: pane.car.loaded

        PlainButton {
            objectName: "paneHistory"
            width: (parent.width - parent.spacing) / 2
            text: qsTr("History")
            onClicked: pane.historyAsked("")
        }
        PlainButton {
            objectName: "paneOpen"
            width: (parent.width - parent.spacing) / 2
            text: qsTr("Open the car")
            onClicked: pane.carAsked()
        }
    }
}
