// OpenCarStepPanels: which panels (a tap on the drawing or on its card), how each is painted, and the
// operations with their hours. wide: a CSV file can be read in.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens
import Jambline.Job

Column {
    id: step

    required property OpenCarViewModel form
    property bool wide: false

    spacing: Theme.gap

    PaperCard {
        width: parent.width
        visible: step.form.body < 0
        dashed: true

        Words {
            width: parent.width
            text: qsTr("The panels come with the body.")
            color: Theme.pencil
        }
    }
    PanelChoice {
        width: parent.width
        visible: step.form.body >= 0
        form: step.form
    }
    Repeater {
        model: step.form.panels

        PanelPlanCard {
            required property string key
            required property string place

            width: step.width
            where: place
            onFlipped: step.form.flipPanel(key)
            onPlaceAsked: step.form.flipOnCar(key)
            onFinishAsked: step.form.nextFinish(key)
            onTreatmentAsked: step.form.nextTreatment(key)
            onSubstrateAsked: step.form.nextSubstrate(key)
        }
    }
    Words {
        width: parent.width
        topPadding: Theme.gap
        text: qsTr("Operations, %1").arg(step.form.hoursSum)
        bold: true
        size: Theme.lead
        Accessible.role: Accessible.Heading
    }
    Repeater {
        model: step.form.operations

        OperationRow {
            required property int index

            width: step.width
            onLess: step.form.addTenths(index, -1)
            onMore: step.form.addTenths(index, 1)
            onDropped: step.form.removeOperation(index)
        }
    }
    PlainButton {
        width: parent.width
        text: qsTr("The usual operations again")
        secondLine: qsTr("common practice, no source")
        onClicked: step.form.usualOperations()
    }
    EstimateImport {
        width: parent.width
        visible: step.wide
        form: step.form
    }
}
