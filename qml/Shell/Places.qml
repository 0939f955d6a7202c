// Places: the tabs at the foot of every screen. Signal: chosen(place).
import QtQuick
import Jambline.Theme

Item {
    id: bar

    required property Navigation way
    readonly property real cell: width / 3

    signal chosen(int place)

    implicitHeight: Math.max(Theme.places, floorTab.implicitHeight + 16)
    Accessible.role: Accessible.PageTabList
    Accessible.name: qsTr("Places")

    TapeLabel {
        id: floorTab
        objectName: "floorTab"
        x: bar.width / 6 - width / 2
        anchors.verticalCenter: parent.verticalCenter
        width: Math.min(bar.cell, Math.max(120, implicitWidth))
        height: parent.height
        tab: true
        pressable: true
        chosen: bar.way.place === Navigation.Floor
        text: qsTr("Floor")
        onClicked: bar.chosen(Navigation.Floor)
    }
    TapeLabel {
        objectName: "boothTab"
        x: bar.width / 2 - width / 2
        anchors.verticalCenter: parent.verticalCenter
        width: Math.min(bar.cell, Math.max(120, implicitWidth))
        height: parent.height
        tab: true
        pressable: true
        chosen: bar.way.place === Navigation.Booth
        text: qsTr("Booth")
        onClicked: bar.chosen(Navigation.Booth)
    }
    TapeLabel {
        objectName: "recordTab"
        x: 5 * bar.width / 6 - width / 2
        anchors.verticalCenter: parent.verticalCenter
        width: Math.min(bar.cell, Math.max(120, implicitWidth))
        height: parent.height
        tab: true
        pressable: true
        chosen: bar.way.place === Navigation.Record
        text: qsTr("Record")
        onClicked: bar.chosen(Navigation.Record)
    }
}
