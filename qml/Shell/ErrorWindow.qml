// ErrorWindow: stands instead of the program when the shop's folder cannot be opened: what happened,
// what stands, what to do; codes and paths behind Details.
import QtQuick
import QtQuick.Window
import Jambline.Theme

Window {
    id: window

    required property string what
    required property string kept
    required property string todo
    required property string details
    required property bool dark

    visible: true
    width: 560
    height: 420
    minimumWidth: 360
    minimumHeight: 300
    title: qsTr("Jambline")
    color: Theme.paper

    Binding { target: Theme; property: "dark"; value: window.dark }

    Column {
        x: Theme.gutter
        y: Theme.gutter
        width: parent.width - 2 * Theme.gutter
        spacing: 16

        Words {
            width: parent.width
            text: qsTr("The shop was not opened")
            bold: true
            size: Theme.screen
            Accessible.role: Accessible.Heading
        }
        NoteBanner {
            width: parent.width
            height: implicitHeight
            kind: NoteBanner.NotSaved
            happened: window.what
            stands: Array.from([window.kept, window.todo]).filter(words => words !== "").join("\n")
            details: window.details
        }
        SlabButton {
            width: parent.width
            height: implicitHeight
            text: qsTr("Close the program")
            onClicked: Qt.quit()
        }
    }
}
