// HoursTableSheet: the shown days as a table for other programs: of whom, exact or rounded, where to.
// hours: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property HoursViewModel hours
    property bool everybody: false
    property int step: 0

    title: qsTr("Table")

    Column {
        id: form
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gutter

        Words {
            width: parent.width
            text: qsTr("%1, one row a day, car and operation. The log stays exact.").arg(sheet.hours.title)
        }
        ActRow {
            width: parent.width

            PlainButton {
                objectName: "tableOfOne"
                text: sheet.hours.who
                chosen: !sheet.everybody
                onClicked: sheet.everybody = false
            }
            PlainButton {
                objectName: "tableOfAll"
                text: qsTr("Everybody")
                chosen: sheet.everybody
                onClicked: sheet.everybody = true
            }
        }
        Words {
            width: parent.width
            text: qsTr("Rounded up and down alike, only in the table")
            bold: true
        }
        Flow {
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: sheet.hours.steps

                PlainButton {
                    required property int index
                    required property string modelData

                    objectName: "tableStep" + index
                    width: Math.min(form.width, Math.max(Theme.touch, implicitWidth))
                    height: implicitHeight
                    text: modelData
                    chosen: sheet.step === index
                    onClicked: sheet.step = index
                }
            }
        }
        FaceField {
            id: place
            objectName: "tablePlace"
            width: parent.width
            label: qsTr("Folder")
            text: sheet.hours.place
            maximumLength: 4096
        }
        Words {
            objectName: "tableWritten"
            width: parent.width
            visible: text !== ""
            text: sheet.hours.written
            bold: true
            wrapMode: Text.WrapAtWordBoundaryOrAnywhere
        }
        SlabButton {
            objectName: "tableWrite"
            width: parent.width
            height: implicitHeight
            text: qsTr("Write the table")
            onClicked: sheet.hours.writeTable(place.text, sheet.step, sheet.everybody)
        }
    }
}
