// OrdersSheet: what a car waits for from outside: parts on order and work that somebody else does, and
// the page of one of them. orders: the view model. show() opens the list.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property OrdersViewModel orders
    property int page: OrdersSheet.List

    enum Page { List, Part, Outside }

    function show() {
        page = OrdersSheet.List;
        opened = true;
    }

    function openPart(key: string) {
        orders.startPart(key);
        page = OrdersSheet.Part;
    }

    function openOutside(key: string) {
        orders.startOutside(key);
        page = OrdersSheet.Outside;
    }

    title: page === OrdersSheet.Part ? qsTr("Part on order")
        : page === OrdersSheet.Outside ? qsTr("Work outside") : qsTr("On order, outside")
    onClosed: page = OrdersSheet.List

    Connections {
        target: sheet.orders
        function onKept() { sheet.page = OrdersSheet.List; }
    }

    component Heading: Words {
        width: parent ? parent.width : 0
        topPadding: 8
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }

    Column {
        visible: sheet.page === OrdersSheet.List
        width: parent.width
        height: visible ? implicitHeight : 0
        spacing: Theme.gap

        Heading { text: qsTr("Parts on order") }
        EmptyCard {
            width: parent.width
            visible: sheet.orders.partCount === 0
            words: qsTr("No part was ordered for this car.")
        }
        Repeater {
            model: sheet.visible ? sheet.orders.parts : null

            OrderRow {
                required property int index
                required property string key
                required property int state

                objectName: "orderedPart" + index
                width: parent?.width ?? 0
                writable: sheet.orders.writable
                actName: "partArrived" + index
                actText: state === 0 || state === 2 ? qsTr("Arrived") : ""
                onActed: sheet.orders.arrived(key)
                onOpened: sheet.openPart(key)
            }
        }
        PlainButton {
            objectName: "orderPart"
            width: parent.width
            height: implicitHeight
            visible: sheet.orders.writable
            pressable: visible
            iconName: "plus"
            beside: true
            text: qsTr("A part on order")
            onClicked: sheet.openPart("")
        }
        Heading { text: qsTr("Work outside") }
        EmptyCard {
            width: parent.width
            visible: sheet.orders.outsideCount === 0
            words: qsTr("Glass, calibration or alignment by another firm is noted here.")
        }
        Repeater {
            model: sheet.visible ? sheet.orders.outside : null

            OrderRow {
                required property int index
                required property string key
                required property int state

                objectName: "outsideWork" + index
                width: parent?.width ?? 0
                writable: sheet.orders.writable
                actName: "outsideNext" + index
                actText: state === 0 ? qsTr("Goes out") : state === 1 ? qsTr("Is back") : ""
                onActed: state === 0 ? sheet.orders.wentOut(key) : sheet.orders.cameBack(key)
                onOpened: sheet.openOutside(key)
            }
        }
        PlainButton {
            objectName: "orderOutside"
            width: parent.width
            height: implicitHeight
            visible: sheet.orders.writable
            pressable: visible
            iconName: "plus"
            beside: true
            text: qsTr("Work by another firm")
            onClicked: sheet.openOutside("")
        }
    }
    Column {
        visible: sheet.page !== OrdersSheet.List
        width: parent.width
        height: visible ? implicitHeight : 0
        spacing: Theme.gap

        PlainButton {
            objectName: "orderBack"
            width: parent.width
            height: implicitHeight
            iconName: "back"
            beside: true
            text: qsTr("All of this car")
            onClicked: sheet.page = OrdersSheet.List
        }
        Repeater {
            model: sheet.page === OrdersSheet.List ? 0 : 1

            OrderForm {
                width: parent?.width ?? 0
                orders: sheet.orders
                ofPart: sheet.page === OrdersSheet.Part
            }
        }
    }
}
