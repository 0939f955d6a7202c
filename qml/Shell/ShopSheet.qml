// ShopSheet: the shop's own page: name and zone, people, racks, the shop as a folder; with a person
// chosen in it, that person's page. shop and folder must be set. showShop() opens it.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property ShopViewModel shop
    required property ShopFolderViewModel folder
    readonly property bool ofPerson: shop.person !== ""

    function showShop() {
        shop.open("");
        opened = true;
    }

    title: ofPerson ? shop.personName : qsTr("The shop")
    onClosed: shop.open("")

    component Heading: Words {
        width: parent ? parent.width : 0
        topPadding: 8
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }

    Column {
        visible: !sheet.ofPerson
        width: parent.width
        height: visible ? implicitHeight : 0
        spacing: Theme.gap

        ShopNameRows {
            width: parent.width
            shop: sheet.shop
        }
        Heading { text: qsTr("People") }
        Repeater {
            model: sheet.visible ? sheet.shop.people : null

            PlainButton {
                required property string personId
                required property string personName
                required property string standing

                objectName: "shopPerson"
                width: sheet.ofPerson || !parent ? 0 : parent.width
                height: implicitHeight
                text: personName
                secondLine: standing
                onClicked: sheet.shop.open(personId)
            }
        }
        Heading { text: qsTr("Places on the racks") }
        RackRows {
            width: parent.width
            shop: sheet.shop
        }
        ShopFolderRows {
            width: parent.width
            folder: sheet.folder
        }
    }
    PersonRows {
        visible: sheet.ofPerson
        width: parent.width
        height: visible ? implicitHeight : 0
        shop: sheet.shop
    }
}
