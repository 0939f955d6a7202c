// OrderForm: one part on order (ofPart), or one work outside: what it is, how it stands, for when.
// orders: the view model, which was told what is typed.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: page

    required property OrdersViewModel orders
    property bool ofPart: true
    // Both kinds have what is to come first; the last of each is over.
    readonly property bool asksDay: ofPart ? orders.state === 0 : orders.state < 2

    function keep() {
        if (ofPart)
            orders.keepPart(name.text, day.text);
        else
            orders.keepOutside(name.text, day.text);
    }

    spacing: 12
    bottomPadding: Theme.gutter

    WordChips {
        width: parent.width
        visible: !page.ofPart
        title: qsTr("What is done")
        key: "outsideKind"
        words: page.orders.kinds
        chosen: page.orders.kind
        onPicked: index => page.orders.kind = index
    }
    TypedField {
        id: name
        objectName: "orderName"
        width: parent.width
        label: page.ofPart ? qsTr("Part") : qsTr("By whom")
        placeholder: page.ofPart ? qsTr("left headlamp") : qsTr("name of the firm")
        text: page.orders.name
        maximumLength: 60
        form: page.orders
        field: "name"
        onEdited: page.orders.nothingWrong()
    }
    WordChips {
        width: parent.width
        title: qsTr("How it stands")
        key: "orderState"
        words: page.ofPart ? page.orders.partStates : page.orders.outsideStates
        chosen: page.orders.state
        onPicked: index => page.orders.state = index
    }
    Column {
        width: parent.width
        visible: page.asksDay
        spacing: Theme.gap

        Words {
            width: parent.width
            text: page.ofPart ? qsTr("Comes on") : qsTr("Back on")
            bold: true
            color: Theme.pencil
            Accessible.role: Accessible.Heading
        }
        Flow {
            id: chips
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: page.orders.days

                PlainButton {
                    required property int index
                    required property string key
                    required property string title

                    objectName: "orderDay" + index
                    width: Math.min(chips.width, Math.max(Theme.touch, implicitWidth))
                    height: implicitHeight
                    text: title
                    name: page.ofPart ? qsTr("Comes on: %1").arg(title) : qsTr("Back on: %1").arg(title)
                    chosen: day.text === key
                    onClicked: {
                        day.text = key;
                        page.orders.nothingWrong();
                    }
                }
            }
        }
        TypedField {
            id: day
            objectName: "orderDayTyped"
            width: parent.width
            label: qsTr("Or another day")
            placeholder: qsTr("3/9/2026")
            text: page.orders.day
            tail: page.orders.dayWords(text)
            maximumLength: 10
            form: page.orders
            field: "day"
            onEdited: page.orders.nothingWrong()
            onAccepted: page.keep()
        }
    }
    SlabButton {
        objectName: "orderKeep"
        width: parent.width
        height: implicitHeight
        text: page.ofPart ? (page.orders.isNew ? qsTr("Note this part") : qsTr("Change this part"))
            : page.orders.isNew ? qsTr("Note this work") : qsTr("Change this work")
        onClicked: page.keep()
    }
}
