// ShopSheet: the shop's own page: name and zone, people, racks, pictures wanted at each stage, the shop
// as a folder; products and their sheets; open hours; with a person chosen in it, that person's page.
// shop, shots and folder must be set.
// showShop(), showProducts() and showPerson(personId) open it.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property ShopViewModel shop
    required property ShopFolderViewModel folder
    property ShotListViewModel shots: null
    property ProductViewModel products: null
    property CalendarViewModel calendar: null
    property RetentionViewModel retention: null
    readonly property bool ofPerson: shop.person !== ""
    property bool ofShots: false
    property bool ofProducts: false
    property bool ofCalendar: false
    readonly property bool ofShop: !ofPerson && !ofShots && !ofProducts && !ofCalendar

    function showShop() {
        toShop();
        opened = true;
    }

    function showProducts() {
        toShop();
        ofProducts = true;
        opened = true;
    }

    function showPerson(personId: string) {
        toShop();
        shop.open(personId);
        opened = true;
    }

    function toShop() {
        shop.open("");
        shots?.open("");
        products?.toList();
        ofShots = false;
        ofProducts = false;
        ofCalendar = false;
    }

    title: ofPerson ? shop.personName : ofProducts ? products.pageTitle : ofCalendar ? qsTr("Open hours") : !ofShots ? qsTr("The shop")
        : shots.stage === "" ? qsTr("Pictures") : shots.stageTitle
    onClosed: toShop()

    component Heading: Words {
        width: parent ? parent.width : 0
        topPadding: 8
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }

    Column {
        visible: sheet.ofShop
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
                width: !sheet.ofShop || !parent ? 0 : parent.width
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
        Heading {
            visible: sheet.calendar !== null
            text: qsTr("Open hours and days closed")
        }
        PlainButton {
            objectName: "shopCalendar"
            visible: sheet.calendar !== null
            pressable: visible
            width: parent.width
            height: implicitHeight
            text: qsTr("When the shop is open")
            secondLine: sheet.calendar?.summary ?? ""
            onClicked: {
                sheet.calendar.open();
                sheet.ofCalendar = true;
            }
        }
        Heading {
            visible: sheet.shots !== null
            text: qsTr("Pictures")
        }
        PlainButton {
            objectName: "shopShots"
            visible: sheet.shots !== null
            pressable: visible
            width: parent.width
            height: implicitHeight
            text: qsTr("What each stage wants")
            onClicked: sheet.ofShots = true
        }
        Heading {
            visible: sheet.products !== null
            text: qsTr("Paint, adhesive, urethane")
        }
        PlainButton {
            objectName: "shopProducts"
            visible: sheet.products !== null
            pressable: visible
            width: parent.width
            height: implicitHeight
            text: qsTr("Products and their sheets")
            onClicked: sheet.ofProducts = true
        }
        ShopFolderRows {
            width: parent.width
            folder: sheet.folder
        }
    }
    Repeater {
        model: sheet.ofProducts ? 1 : 0

        ProductRows {
            width: parent?.width ?? 0
            products: sheet.products
        }
    }
    Repeater {
        model: sheet.ofCalendar ? 1 : 0

        CalendarRows {
            width: parent?.width ?? 0
            calendar: sheet.calendar
        }
    }
    Repeater {
        model: sheet.ofShots ? 1 : 0

        ShotListRows {
            width: parent?.width ?? 0
            shots: sheet.shots
        }
    }
    PersonRows {
        visible: sheet.ofPerson
        width: parent.width
        height: visible ? implicitHeight : 0
        shop: sheet.shop
        retention: sheet.retention
    }
}
