// OpenCarStepBody: one of five drawn cars, and how it is driven. goOn: a choice goes to the next page.
pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Jambline.Theme
import Jambline.Screens
import Jambline.Job

Column {
    id: step

    required property OpenCarViewModel form
    property bool goOn: false

    spacing: Theme.gap * 2

    GridLayout {
        id: bodies
        width: parent.width
        columns: Math.max(2, Math.min(5, Math.floor((width + Theme.gap) / (128 * Theme.textScale))))
        columnSpacing: Theme.gap
        rowSpacing: Theme.gap

        Repeater {
            model: step.form.bodies

            PaperCard {
                id: choice

                required property string key
                required property string title
                required property int shape
                required chosen

                Layout.preferredWidth: (bodies.width - (bodies.columns - 1) * bodies.columnSpacing) / bodies.columns
                Layout.fillHeight: true
                pressable: true
                padding: 8
                name: chosen ? qsTr("Body %1, chosen").arg(title) : qsTr("Body %1").arg(title)
                onClicked: step.form.chooseBody(key, step.goOn)

                Column {
                    width: parent.width
                    spacing: 6

                    BodyDrawing {
                        width: parent.width
                        height: 116
                        shape: choice.shape
                        line: Theme.ink
                        glass: Theme.edge
                    }
                    Words {
                        width: parent.width
                        text: choice.title
                        mute: true
                        bold: choice.chosen
                        size: Theme.note
                        horizontalAlignment: Text.AlignHCenter
                    }
                }
            }
        }
    }
    Words {
        width: parent.width
        text: qsTr("How it is driven")
        bold: true
        size: Theme.note
        color: Theme.pencil
    }
    ChoiceFlow {
        width: parent.width
        model: step.form.drives
        question: qsTr("Drive")
        onPicked: key => step.form.chooseDrive(key)
    }
}
