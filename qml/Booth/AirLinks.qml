// AirLinks: the ways from the booths to what protects people: the register with what presses most in
// it, the limits, exposure. Signals: protectionAsked, limitsAsked, exposureAsked.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: links

    property RegisterViewModel protection: null
    readonly property string pressing: protection?.pressing ?? ""

    signal protectionAsked
    signal limitsAsked
    signal exposureAsked

    spacing: Theme.gap

    Words {
        width: parent.width
        text: qsTr("What protects people")
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }
    PlainButton {
        objectName: "protectionLink"
        width: parent.width
        height: implicitHeight
        beside: true
        text: qsTr("Protection register")
        secondLine: links.pressing === "" ? qsTr("fit tests, cartridges, breathing air, due days") : links.pressing
        shape: links.protection?.pressingShape ?? ShapeKind.None
        onClicked: links.protectionAsked()
    }
    ActRow {
        width: parent.width

        PlainButton {
            objectName: "limitsLink"
            text: qsTr("Limits")
            secondLine: qsTr("with their source")
            onClicked: links.limitsAsked()
        }
        PlainButton {
            objectName: "exposureLink"
            text: qsTr("Exposure")
            secondLine: qsTr("what was sampled")
            onClicked: links.exposureAsked()
        }
    }
}
