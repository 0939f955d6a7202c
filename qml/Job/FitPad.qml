// FitPad: the gaps of an edge typed one after the other: where, what is wanted, what was typed, gap or
// flush, the big keys. fit: the view model; backText: words of the way back, "" none; covered: something
// else takes the place of gap and flush. Signal: backAsked.
import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: typing

    required property FitViewModel fit
    property string backText: ""
    property bool covered: false
    readonly property alias keysTop: pad.y
    readonly property bool partial: pad.typed !== "" && !pad.whole

    signal backAsked

    function clear() {
        pad.typed = "";
        pad.whole = false;
    }

    implicitHeight: pad.y + pad.height

    Connections {
        target: typing.fit
        function onTaken() {
            if (typing.partial)
                typing.clear();
        }
        function onKept() {
            typing.clear();
        }
    }
    Binding {
        target: typing.fit
        property: "pending"
        value: typing.visible && typing.partial ? pad.value : -1
    }
    Column {
        id: head
        width: parent.width
        spacing: 2

        Words {
            objectName: "fitTyped"
            width: parent.width
            text: typing.fit.typedTitle
            bold: true
            size: Theme.lead
            Accessible.role: Accessible.Heading
        }
        Words {
            width: parent.width
            text: typing.fit.typedNote
            size: Theme.note
            color: Theme.pencil
        }
        Words {
            objectName: "fitSoFar"
            width: parent.width
            text: typing.fit.typedSoFar
            bold: true
        }
    }
    ActRow {
        id: kinds
        opacity: typing.covered ? 0 : 1
        enabled: !typing.covered
        y: head.height + Theme.gap
        width: parent.width
        height: implicitHeight

        PlainButton {
            objectName: "fitGap"
            text: qsTr("Gap")
            textSize: Theme.note
            chosen: typing.fit.kind === FitViewModel.Gap
            onClicked: {
                typing.clear();
                typing.fit.begin(FitViewModel.Gap);
            }
        }
        PlainButton {
            objectName: "fitFlush"
            text: qsTr("Flush")
            textSize: Theme.note
            chosen: typing.fit.kind === FitViewModel.Flush
            onClicked: {
                typing.clear();
                typing.fit.begin(FitViewModel.Flush);
            }
        }
        PlainButton {
            objectName: "fitLeaveOut"
            visible: typing.fit.typedHere
            pressable: visible
            text: qsTr("Take out")
            textSize: Theme.note
            name: qsTr("Take the number of this point out")
            onClicked: typing.fit.leaveOut()
        }
        PlainButton {
            objectName: "fitBack"
            visible: typing.backText !== "" && !typing.fit.typedHere
            pressable: visible
            text: typing.backText
            textSize: Theme.note
            name: qsTr("Back to the panel")
            onClicked: typing.backAsked()
        }
    }
    KeyPad {
        id: pad
        objectName: "fitPad"
        y: kinds.y + kinds.height + Theme.gap
        width: parent.width
        height: implicitHeight
        focus: true
        kind: KeyPad.Tenths
        digits: typing.fit.digits
        unitText: qsTr("mm")
        unitKey: typing.fit.unitKey
        wrong: typing.fit.wrong
        onComplete: value => typing.fit.type(value)
        onUnitPressed: {
            typing.clear();
            typing.fit.pressUnit();
        }
    }
}
