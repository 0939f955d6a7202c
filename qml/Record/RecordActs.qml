// RecordActs: the ways from the record to the pages of the shop. Signals: dirtAsked, hoursAsked,
// checkAsked, sendingAsked.
import QtQuick
import Jambline.Theme

Flow {
    id: acts

    readonly property real wanted: dirt.implicitWidth + hours.implicitWidth + check.implicitWidth + sending.implicitWidth + 3 * spacing
    readonly property bool fits: wanted <= width
    readonly property bool paired: 2 * Math.max(dirt.implicitWidth, hours.implicitWidth, check.implicitWidth, sending.implicitWidth) + spacing <= width

    signal dirtAsked
    signal hoursAsked
    signal checkAsked
    signal sendingAsked

    function part(natural: real): real {
        return fits ? Math.floor(natural + (width - wanted) / 4) : paired ? Math.floor((width - spacing) / 2) : width;
    }

    spacing: Theme.gap

    PlainButton {
        id: dirt
        objectName: "recordDirt"
        width: acts.part(implicitWidth)
        height: implicitHeight
        text: qsTr("Dirt over time")
        onClicked: acts.dirtAsked()
    }
    PlainButton {
        id: hours
        objectName: "recordHours"
        width: acts.part(implicitWidth)
        height: implicitHeight
        text: qsTr("Hours")
        onClicked: acts.hoursAsked()
    }
    PlainButton {
        id: check
        objectName: "recordCheck"
        width: acts.part(implicitWidth)
        height: implicitHeight
        text: qsTr("Check all")
        onClicked: acts.checkAsked()
    }
    PlainButton {
        id: sending
        objectName: "recordSending"
        width: acts.part(implicitWidth)
        height: implicitHeight
        text: qsTr("Sending")
        name: qsTr("Sending, and the devices of the shop")
        onClicked: acts.sendingAsked()
    }
}
