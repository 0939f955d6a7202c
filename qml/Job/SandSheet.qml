// SandSheet: from when it may be sanded, asked once a car: the sheet says now, or a time. Signal:
// answered.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property PlanViewModel plan

    signal answered

    function from(tomorrow: bool) {
        if (!plan.sayFrom(field.text, tomorrow))
            return;
        close();
        answered();
    }

    title: qsTr("From when may it be sanded?")

    Column {
        width: parent.width
        spacing: Theme.gap

        Words {
            width: parent.width
            text: qsTr("Past the time of the product sheet, panel cool, a thumbnail in a hidden place leaves no print. A run stays soft longer.")
            color: Theme.pencil
        }
        SlabButton {
            objectName: "sheetAllows"
            width: parent.width
            text: qsTr("The sheet says it may be cut now")
            secondLine: qsTr("cool, and firm under the thumbnail")
            onClicked: {
                sheet.plan.saySheetAllows();
                sheet.close();
                sheet.answered();
            }
        }
        FaceField {
            id: field
            objectName: "sandField"
            width: parent.width
            label: qsTr("Or sand from")
            placeholder: qsTr("14:30")
            maximumLength: 10
            wrong: sheet.plan.refusal
        }
        ActRow {
            width: parent.width

            PlainButton {
                objectName: "sandToday"
                text: qsTr("Today")
                name: qsTr("Sand from this time today")
                onClicked: sheet.from(false)
            }
            PlainButton {
                objectName: "sandTomorrow"
                text: qsTr("Tomorrow")
                name: qsTr("Sand from this time tomorrow")
                onClicked: sheet.from(true)
            }
        }
    }
}
