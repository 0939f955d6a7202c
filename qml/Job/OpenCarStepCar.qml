// OpenCarStepCar: which car: plate or stock number, and the VIN with its check shown as it is typed.
// Signals: answered (Enter in a field), scanAsked.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: step

    required property OpenCarViewModel form

    signal answered
    signal scanAsked

    function focusField() {
        plate.focusField();
    }

    spacing: Theme.gap * 2

    FaceField {
        id: plate
        objectName: "openPlate"
        width: parent.width
        label: qsTr("Plate or stock number")
        bigText: true
        maximumLength: 24
        text: step.form.plate
        onEdited: text => step.form.plate = text
        onAccepted: step.answered()
    }
    FaceField {
        objectName: "openVin"
        width: parent.width
        label: qsTr("VIN, if it is at hand")
        maximumLength: 32
        text: step.form.vin
        tail: step.form.vinState === OpenCarViewModel.Short ? step.form.vinWords : ""
        onEdited: text => step.form.vin = text
        onAccepted: step.answered()
    }
    PlainButton {
        objectName: "openScan"
        width: parent.width
        visible: step.form.scan !== null && step.form.vinState !== OpenCarViewModel.Passes
        pressable: visible
        text: qsTr("Scan the VIN")
        secondLine: qsTr("from its barcode, or from a picture of it")
        beside: false
        onClicked: step.scanAsked()
    }
    NoteBanner {
        width: parent.width
        visible: step.form.vinState === OpenCarViewModel.Fails || step.form.vinState === OpenCarViewModel.Short && step.form.vin.length > 10
        kind: NoteBanner.Due
        happened: step.form.vinState === OpenCarViewModel.Short ? qsTr("This VIN is too short: %1").arg(step.form.vinWords)
                                                                : step.form.vinWords
        stands: qsTr("Nothing was opened yet.")
        actText: qsTr("Use as typed")
        onActed: step.form.useVinAsTyped()
    }
    Row {
        width: parent.width
        visible: step.form.vinState === OpenCarViewModel.Passes || step.form.vinState === OpenCarViewModel.AsTyped
        spacing: 10

        StateShape {
            id: mark
            kind: step.form.vinState === OpenCarViewModel.Passes ? ShapeKind.Done : ShapeKind.Waits
            ground: Theme.paper
        }
        Words {
            width: parent.width - mark.width - 10
            text: step.form.vinWords
            color: Theme.pencil
        }
    }
}
