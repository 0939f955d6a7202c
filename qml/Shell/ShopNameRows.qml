// ShopNameRows: what the shop is called and by which clock it lives; kept by the main act.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: rows

    required property ShopViewModel shop
    readonly property bool changed: name.text.trim() !== rows.shop.name || zone.text.trim() !== rows.shop.zone

    spacing: Theme.gap

    FaceField {
        id: name
        objectName: "shopName"
        width: parent.width
        label: qsTr("Name of the shop")
        text: rows.shop.name
        maximumLength: 40
    }
    FaceField {
        id: zone
        objectName: "shopZone"
        width: parent.width
        label: qsTr("Time zone")
        text: rows.shop.zone
        maximumLength: 40
    }
    Flow {
        id: zones
        width: parent.width
        spacing: Theme.gap

        Repeater {
            model: [
                { zoneName: "America/New_York", said: qsTr("Eastern") },
                { zoneName: "America/Chicago", said: qsTr("Central") },
                { zoneName: "America/Denver", said: qsTr("Mountain") },
                { zoneName: "America/Phoenix", said: qsTr("Arizona") },
                { zoneName: "America/Los_Angeles", said: qsTr("Pacific") },
                { zoneName: "America/Anchorage", said: qsTr("Alaska") },
                { zoneName: "Pacific/Honolulu", said: qsTr("Hawaii") }
            ]

            PlainButton {
                required property var modelData

                width: (zones.width - Theme.gap) / 2
                height: implicitHeight
                text: modelData.said
                chosen: zone.text.trim() === modelData.zoneName
                onClicked: zone.text = modelData.zoneName
            }
        }
    }
    SlabButton {
        objectName: "keepShopName"
        width: parent.width
        height: implicitHeight
        text: qsTr("Keep name and zone")
        secondLine: name.text.trim() === "" ? qsTr("needs a name") : !rows.changed ? qsTr("nothing is changed") : ""
        waits: secondLine !== ""
        onRefused: name.focusField()
        onClicked: rows.shop.nameShop(name.text, zone.text)
    }
}
