// RackRows: the places on the racks in words, and one more.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: rows

    required property ShopViewModel shop

    spacing: Theme.gap

    Words {
        width: parent.width
        text: rows.shop.racks.length > 0 ? Array.from(rows.shop.racks).join(qsTr(", ")) : qsTr("None yet.")
    }
    FaceField {
        id: field
        objectName: "rackName"
        width: parent.width
        label: qsTr("One more place")
        placeholder: qsTr("rack 2, left")
        maximumLength: 40
        onAccepted: add.press()
    }
    PlainButton {
        id: add
        objectName: "addRack"
        width: parent.width
        height: implicitHeight
        text: qsTr("Add this place")
        secondLine: dashed ? qsTr("needs a name") : ""
        dashed: field.text.trim() === ""
        onRefused: field.focusField()
        onClicked: rows.shop.addRack(field.text)
    }
    Connections {
        target: rows.shop
        function onRackAdded() {
            field.text = "";
        }
    }
}
