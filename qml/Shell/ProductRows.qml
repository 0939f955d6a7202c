// ProductRows: what the shop's products are and what their sheets say: the list, one product, the
// points of a milestone, a drive-away table. A manager types, anybody reads. products must be set.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: rows

    required property ProductViewModel products
    readonly property bool ofList: products.page === ProductViewModel.List
    readonly property bool ofProduct: products.page === ProductViewModel.Product

    spacing: Theme.gap

    component Heading: Words {
        width: parent ? parent.width : 0
        topPadding: 8
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }

    PlainButton {
        objectName: "productBack"
        visible: !rows.ofList
        pressable: visible
        width: parent.width
        height: visible ? implicitHeight : 0
        iconName: "back"
        beside: true
        text: rows.products.backWords
        onClicked: rows.products.back()
    }
    Words {
        width: parent.width
        visible: !rows.products.manager
        text: qsTr("A manager types these.")
        color: Theme.pencil
    }
    PaperCard {
        width: parent.width
        visible: rows.ofList && rows.products.productCount === 0
        dashed: true

        Item {
            width: parent.width
            height: Math.max(why.height, 64)

            Hatch {
                width: 56
                height: 56
                anchors.verticalCenter: parent.verticalCenter
            }
            Words {
                id: why
                x: 70
                width: parent.width - x
                anchors.verticalCenter: parent.verticalCenter
                text: qsTr("No product is entered. Its sheet is typed once; mixes, cure clocks and drive-away times rest on it.")
                color: Theme.pencil
            }
        }
    }
    Repeater {
        model: rows.ofList ? rows.products.products : null

        PlainButton {
            required property string key
            required property string title
            required property string facts

            objectName: "productRow"
            width: rows.width
            height: implicitHeight
            text: title
            secondLine: facts
            onClicked: rows.products.open(key)
        }
    }
    SlabButton {
        objectName: "productNew"
        visible: rows.ofList && rows.products.manager
        pressable: visible
        width: parent.width
        height: visible ? implicitHeight : 0
        text: qsTr("Add a product")
        secondLine: qsTr("from its sheet")
        onClicked: rows.products.open("")
    }
    Repeater {
        model: rows.ofProduct ? 1 : 0

        ProductFields {
            width: rows.width
            products: rows.products
        }
    }
    Repeater {
        model: rows.ofList || rows.ofProduct ? 0 : 1

        ProductPoints {
            width: rows.width
            products: rows.products
        }
    }
}
