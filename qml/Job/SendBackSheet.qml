// SendBackSheet: why a part goes back, with a picture if one wants. parts: the view model, which knows
// what is sent back; store: its pictures. Signal: photoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property PartsViewModel parts
    property PictureStore store: null

    signal photoAsked

    function show(of: string) {
        parts.startReturn(of);
        opened = true;
    }

    title: qsTr("Send back")
    onClosed: parts.stopReturn()

    Connections {
        target: sheet.parts
        function onChanged() {
            if (!sheet.parts.returns)
                sheet.close();
        }
    }

    Column {
        id: reasons
        width: parent.width
        spacing: Theme.gap

        Words {
            width: parent.width
            text: qsTr("%1: what is wrong with it?").arg(sheet.parts.titleOf(sheet.parts.returnKey))
            size: Theme.lead
        }
        Row {
            width: parent.width
            spacing: Theme.gap

            PictureFrame {
                id: frame
                visible: sheet.parts.returnFile !== "" && sheet.store !== null
                width: visible ? 96 : 0
                height: 76
                store: sheet.store
                file: sheet.parts.returnFile
            }
            PlainButton {
                objectName: "returnPhoto"
                width: parent.width - (frame.visible ? frame.width + parent.spacing : 0)
                height: implicitHeight
                iconName: "camera"
                beside: true
                text: sheet.parts.returnFile === "" ? qsTr("With a picture") : qsTr("Without this picture")
                onClicked: {
                    if (sheet.parts.returnFile !== "") {
                        sheet.parts.dropPicture();
                        return;
                    }
                    sheet.parts.willTakePicture();
                    sheet.photoAsked();
                }
            }
        }
        Flow {
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: sheet.parts.reasons

                PlainButton {
                    required property int index
                    required property string modelData

                    objectName: "returnReason" + index
                    width: Math.min(reasons.width, Math.max(112, implicitWidth))
                    height: implicitHeight
                    text: modelData
                    name: qsTr("Send back: %1").arg(modelData)
                    onClicked: sheet.parts.sendBack(sheet.parts.returnKey, modelData)
                }
            }
        }
    }
}
