// HandOnSheet: to whom a part goes: hung at a rack place, or offered to someone. parts: the view
// model. show(key) opens it for a part; "" is the whole car.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property PartsViewModel parts
    property string key: ""

    function show(of: string) {
        key = of;
        opened = true;
    }

    function addRack() {
        parts.addRack(newRack.text);
        newRack.text = "";
    }

    title: qsTr("Hand on")

    Column {
        id: choices
        width: parent.width
        spacing: Theme.gap

        Words {
            width: parent.width
            text: sheet.parts.titleOf(sheet.key)
            bold: true
            size: Theme.lead
        }
        Words {
            width: parent.width
            visible: sheet.key !== ""
            text: qsTr("Hang it at a rack place")
            color: Theme.pencil
        }
        Flow {
            width: parent.width
            visible: sheet.key !== ""
            spacing: Theme.gap

            Repeater {
                model: sheet.parts.racks

                PlainButton {
                    required property string key
                    required property string title

                    width: Math.min(choices.width, Math.max(112, implicitWidth))
                    text: title
                    name: qsTr("Hang at %1").arg(title)
                    onClicked: {
                        sheet.parts.hang(sheet.key, key);
                        sheet.close();
                    }
                }
            }
        }
        FaceField {
            id: newRack
            width: parent.width
            visible: sheet.key !== ""
            label: qsTr("New rack place")
            placeholder: qsTr("rack 1")
            maximumLength: 40
            onAccepted: sheet.addRack()
        }
        PlainButton {
            width: parent.width
            visible: newRack.visible && newRack.text.trim() !== ""
            pressable: visible
            text: qsTr("Add this rack place")
            onClicked: sheet.addRack()
        }
        Words {
            width: parent.width
            text: sheet.key === "" ? qsTr("Offer it to someone") : qsTr("Or offer it to someone")
            color: Theme.pencil
        }
        Flow {
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: sheet.parts.roles

                PlainButton {
                    required property string key
                    required property string title

                    width: Math.min(choices.width, Math.max(112, implicitWidth))
                    text: title
                    name: qsTr("Offer to the %1").arg(title.toLowerCase())
                    onClicked: {
                        sheet.parts.offerTo(sheet.key, key);
                        sheet.close();
                    }
                }
            }
        }
    }
}
