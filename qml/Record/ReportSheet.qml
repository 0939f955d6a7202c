// ReportSheet: the report of the car as a PDF: what goes in, on what paper, where to; then printing
// it. report: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property ReportViewModel report

    title: qsTr("Report")

    Connections {
        target: sheet.report
        function onAsked() {
            sheet.opened = true;
        }
    }

    Column {
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gutter

        Words {
            objectName: "reportInside"
            width: parent.width
            text: sheet.report.insideWords
        }
        Flow {
            id: chips
            width: parent.width
            spacing: Theme.gap
            Accessible.role: Accessible.Grouping
            Accessible.name: qsTr("What goes in")

            Repeater {
                model: [
                    { key: "hours", words: qsTr("Hours") },
                    { key: "names", words: qsTr("Names") },
                    { key: "pictures", words: qsTr("Pictures") }
                ]

                PlainButton {
                    required property var modelData
                    readonly property bool inside: modelData.key === "hours" ? sheet.report.hours
                        : modelData.key === "names" ? sheet.report.names : sheet.report.pictures

                    objectName: "report_" + modelData.key
                    width: Math.min(chips.width, Math.max(112, implicitWidth))
                    height: implicitHeight
                    text: modelData.words
                    secondLine: inside ? qsTr("in") : qsTr("left out")
                    chosen: inside
                    onClicked: {
                        if (modelData.key === "hours")
                            sheet.report.hours = !inside;
                        else if (modelData.key === "names")
                            sheet.report.names = !inside;
                        else
                            sheet.report.pictures = !inside;
                    }
                }
            }
            PlainButton {
                objectName: "reportCustomer"
                width: Math.min(chips.width, Math.max(200, implicitWidth))
                height: implicitHeight
                text: qsTr("For the customer")
                secondLine: qsTr("without hours and names")
                chosen: !sheet.report.hours && !sheet.report.names
                onClicked: sheet.report.forCustomer()
            }
        }
        Words {
            width: parent.width
            visible: text !== ""
            text: sheet.report.leftOutWords
            color: Theme.pencil
        }
        ActRow {
            width: parent.width

            PlainButton {
                objectName: "reportLetter"
                text: qsTr("US letter")
                chosen: sheet.report.letter
                onClicked: sheet.report.letter = true
            }
            PlainButton {
                objectName: "reportA4"
                text: qsTr("A4")
                chosen: !sheet.report.letter
                onClicked: sheet.report.letter = false
            }
        }
        PaperPlace {
            id: where
            width: parent.width
            label: qsTr("Folder for the report")
            place: sheet.report.place
        }
        PaperRunCard {
            width: parent.width
            run: sheet.report.run
        }
        PlainButton {
            objectName: "reportPrint"
            visible: sheet.report.written !== ""
            pressable: visible && !sheet.report.run.busy
            width: parent.width
            height: implicitHeight
            text: qsTr("Print")
            secondLine: qsTr("on the printer of this device")
            onClicked: sheet.report.print()
        }
        SlabButton {
            objectName: "reportWrite"
            width: parent.width
            height: implicitHeight
            text: qsTr("Write the report")
            secondLine: sheet.report.run.busy ? qsTr("it is being written") : qsTr("as a PDF, to print or to send")
            waits: sheet.report.run.busy
            onClicked: sheet.report.write(where.place)
        }
    }
}
