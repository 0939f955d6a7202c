// EarlySheet: the cure clock says not yet: to the clock, or why it is cut now all the same; the reason
// is noted on the car. plan: the view model. Signal: cureAsked.
pragma ComponentBehavior: Bound
import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property PlanViewModel plan

    signal cureAsked

    title: qsTr("Not yet")

    Column {
        width: parent.width
        spacing: Theme.gap

        Row {
            width: parent.width
            spacing: 10

            StateShape {
                id: mark
                kind: ShapeKind.Must
                size: 28
                ground: Theme.paper
            }
            Words {
                width: parent.width - mark.width - 10
                text: sheet.plan.sandWords
                bold: true
                size: Theme.lead
            }
        }
        Words {
            width: parent.width
            text: qsTr("Soft film tears and prints. Solvent still comes out; sanding dust of fresh two-pack makes people ill.")
            color: Theme.pencil
        }
        SlabButton {
            objectName: "earlyCure"
            width: parent.width
            height: implicitHeight
            text: qsTr("Look at the cure clock")
            secondLine: qsTr("log a panel temperature, or the thumbnail")
            onClicked: {
                sheet.close();
                sheet.cureAsked();
            }
        }
        Words {
            width: parent.width
            topPadding: Theme.gap
            text: qsTr("Cut it now, because")
            color: Theme.pencil
        }
        Repeater {
            model: sheet.plan.earlyReasons

            PlainButton {
                required property int index
                required property string modelData

                objectName: "earlyReason" + index
                width: parent ? parent.width : 0
                height: implicitHeight
                text: modelData
                name: qsTr("Cut it now, because %1").arg(modelData)
                onClicked: {
                    sheet.close();
                    sheet.plan.sayEarly(index);
                }
            }
        }
    }
}
