// StepSheet: one step of putting the car together: what stands in its way, its cautions, and the act
// that is possible. assembly: the view model, which was told the step. It closes when it is kept.
pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property AssemblyViewModel assembly
    readonly property int mode: assembly.stepMode
    property bool measures: false  // there is a way to measuring gaps

    signal cureAsked
    signal fitAsked

    function show(step: string) {
        assembly.open(step);
        opened = true;
    }

    title: assembly.stepTitle
    onClosed: assembly.open("")

    Connections {
        target: sheet.assembly
        function onKept() { sheet.close(); }
    }

    Column {
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gap

        Words {
            objectName: "stepWords"
            width: parent.width
            text: sheet.assembly.stepWords
            size: Theme.lead
        }
        Repeater {
            model: sheet.assembly.stepCautions

            CautionLine {
                required property string modelData
                width: parent?.width ?? 0
                words: modelData
            }
        }
        Words {
            width: parent.width
            visible: sheet.assembly.wayCount > 0 && sheet.mode !== AssemblyViewModel.Done
            topPadding: 8
            text: qsTr("What comes before it")
            bold: true
            color: Theme.pencil
            Accessible.role: Accessible.Heading
        }
        Repeater {
            model: sheet.mode === AssemblyViewModel.Done ? null : sheet.assembly.ways

            Row {
                id: way

                required property string title
                required property string words
                required property int shape

                width: parent?.width ?? 0
                spacing: 10

                StateShape {
                    id: mark
                    kind: way.shape
                    key: way.title
                    size: 24
                    ground: Theme.paper
                }
                Column {
                    width: way.width - mark.width - 10
                    spacing: 2

                    Words {
                        width: parent.width
                        text: way.title
                        bold: true
                    }
                    Words {
                        width: parent.width
                        text: way.words
                        size: Theme.note
                        color: Theme.pencil
                    }
                }
            }
        }
        SlabButton {
            objectName: "stepDone"
            width: parent.width
            height: visible ? implicitHeight : 0
            visible: sheet.mode === AssemblyViewModel.Ready
            pressable: visible && sheet.assembly.writable
            text: qsTr("It is done")
            onClicked: sheet.assembly.say()
        }
        Words {
            width: parent.width
            visible: sheet.mode === AssemblyViewModel.NoWay
            text: qsTr("There is no way round this one: it protects who sits in the car.")
            bold: true
        }
        PlainButton {
            objectName: "stepFit"
            width: parent.width
            height: visible ? implicitHeight : 0
            visible: sheet.measures && sheet.assembly.stepOfFit
            pressable: visible
            iconName: "ruler"
            beside: true
            text: qsTr("Measure the gaps")
            onClicked: {
                sheet.close();
                sheet.fitAsked();
            }
        }
        PlainButton {
            objectName: "stepCure"
            width: parent.width
            height: visible ? implicitHeight : 0
            visible: sheet.assembly.stepOfClock
            pressable: visible
            text: qsTr("Look at the cure clocks")
            onClicked: {
                sheet.close();
                sheet.cureAsked();
            }
        }
        Words {
            width: parent.width
            visible: sheet.mode === AssemblyViewModel.Reason
            topPadding: 8
            text: qsTr("It was done all the same, because")
            bold: true
            color: Theme.pencil
            Accessible.role: Accessible.Heading
        }
        GridLayout {
            id: reasons
            width: parent.width
            visible: sheet.mode === AssemblyViewModel.Reason
            columns: width < 300 * Theme.textScale ? 1 : 2
            columnSpacing: Theme.gap
            rowSpacing: Theme.gap

            Repeater {
                model: sheet.mode === AssemblyViewModel.Reason ? sheet.assembly.reasons : null

                PlainButton {
                    required property int index
                    required property string modelData

                    objectName: "against" + index
                    Layout.preferredWidth: Math.floor((reasons.width - (reasons.columns - 1) * reasons.columnSpacing) / reasons.columns)
                    text: modelData
                    name: qsTr("Done against the rule, because: %1").arg(modelData)
                    onClicked: sheet.assembly.sayAgainst(index)
                }
            }
        }
        Words {
            width: parent.width
            visible: sheet.mode === AssemblyViewModel.Reason
            text: qsTr("The reason stands with your name in the time line and on the step.")
            size: Theme.note
            color: Theme.pencil
        }
        PlainButton {
            objectName: "stepReopen"
            width: parent.width
            height: visible ? implicitHeight : 0
            visible: sheet.mode === AssemblyViewModel.Done && sheet.assembly.writable
            pressable: visible
            text: qsTr("It is not done")
            secondLine: qsTr("takes the tick back")
            onClicked: sheet.assembly.reopen()
        }
    }
}
