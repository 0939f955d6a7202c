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
        Rectangle {
            width: parent.width
            height: Math.min(width, sheet.side ? 200 : 150)
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
            Words {
                anchors.centerIn: parent
                width: parent.width - 32
                horizontalAlignment: Text.AlignHCenter
                visible: !glass.drawn
                text: qsTr("Sign here with a finger")
                mute: true
                color: Theme.pencil
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
        ActRow {
            width: parent.width

            PlainButton {
                objectName: "signatureClear"
                text: qsTr("Sign again")
                dashed: !glass.drawn
                onClicked: glass.clear()
            }
            SlabButton {
                objectName: "signatureKeep"
                text: qsTr("Signed")
                waits: !sheet.ready
                secondLine: sheet.ready ? "" : glass.drawn ? qsTr("name missing") : qsTr("signature missing")
                onClicked: sheet.done(glass.strokes, signer.text)
            }
        }
    }
}
