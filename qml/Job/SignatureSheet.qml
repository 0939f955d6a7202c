// SignatureSheet: a customer signs on glass, under what is signed. statement: lines; strokes: what was
// drawn; signer: the name as typed. show() opens it empty. Signal: done(strokes, signer).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    property var statement: []
    readonly property bool ready: glass.drawn && signer.text.trim() !== ""

    signal done(var strokes, string signer)

    function show() {
        glass.clear();
        signer.text = "";
        opened = true;
    }

    title: qsTr("Signature")

    Column {
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gap

        Repeater {
            model: sheet.statement

            Words {
                required property int index
                required property string modelData

                width: parent.width
                text: modelData
                bold: index === 0
            }
        }
        FaceField {
            id: signer
            objectName: "signerName"
            width: parent.width
            label: qsTr("Name of who signs")
            placeholder: qsTr("the customer")
            maximumLength: 80
        }
        Words {
            width: parent.width
            text: qsTr("Sign below with a finger")
            size: Theme.note
            bold: true
            color: Theme.pencil
        }
        Rectangle {
            width: parent.width
            height: Math.min(width, 180)
            radius: Theme.corner
            color: Theme.sheet
            border.width: Theme.line
            border.color: Theme.edge

            Rectangle {
                x: 16
                y: parent.height - 40
                width: parent.width - 32
                height: 1
                color: Theme.chalk
                Accessible.ignored: true
            }
            SignatureItem {
                id: glass
                objectName: "signatureGlass"
                anchors.fill: parent
                anchors.margins: 2
                ink: Theme.ink
                Accessible.role: Accessible.Graphic
                Accessible.name: drawn ? qsTr("Signature, drawn") : qsTr("Signature, empty. Draw it with a finger or the mouse.")
            }
        }
        PlainButton {
            objectName: "signatureClear"
            width: Math.min(parent.width, Math.max(160, implicitWidth))
            text: qsTr("Sign again")
            dashed: !glass.drawn
            onClicked: glass.clear()
        }
        SlabButton {
            objectName: "signatureKeep"
            width: parent.width
            height: implicitHeight
            text: qsTr("Signed")
            waits: !sheet.ready
            secondLine: sheet.ready ? "" : glass.drawn ? qsTr("waits for the name") : qsTr("waits for the name and the signature")
            onClicked: sheet.done(glass.strokes, signer.text)
        }
    }
}
