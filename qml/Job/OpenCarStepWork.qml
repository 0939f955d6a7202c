// OpenCarStepWork: the usual jobs as templates. goOn: a choice goes to the next page.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: step

    required property OpenCarViewModel form
    property bool goOn: false

    spacing: Theme.gap

    Repeater {
        model: step.form.works

        PaperCard {
            id: work

            required property string key
            required property string title
            required property string second
            required chosen

            width: step.width
            pressable: true
            name: chosen ? qsTr("Work %1, chosen, %2").arg(title).arg(second) : qsTr("Work %1, %2").arg(title).arg(second)
            onClicked: step.form.chooseWork(key, step.goOn)

            Column {
                width: parent.width
                spacing: 2

                Words {
                    width: parent.width
                    text: work.title
                    mute: true
                    bold: true
                    size: Theme.lead
                }
                Words {
                    width: parent.width
                    visible: text !== ""
                    text: work.second
                    mute: true
                    size: Theme.note
                    color: Theme.pencil
                }
            }
        }
    }
}
