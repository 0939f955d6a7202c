// SettingsRows: units, light and text size of this device; they hold at once and are kept.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: rows

    required property SettingsViewModel settings

    spacing: Theme.gap

    component Title: Words {
        width: parent ? parent.width : 0
        topPadding: 8
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }

    Title { text: qsTr("Units") }
    ActRow {
        width: parent.width

        PlainButton {
            text: qsTr("US")
            secondLine: qsTr("in, ft²")
            chosen: rows.settings.units === SettingsViewModel.Us
            onClicked: rows.settings.units = SettingsViewModel.Us
        }
        PlainButton {
            text: qsTr("Metric")
            secondLine: qsTr("mm, m²")
            chosen: rows.settings.units === SettingsViewModel.Metric
            onClicked: rows.settings.units = SettingsViewModel.Metric
        }
    }
    Title { text: qsTr("Light") }
    ActRow {
        width: parent.width

        PlainButton {
            text: qsTr("Booth")
            secondLine: qsTr("light")
            chosen: rows.settings.look === SettingsViewModel.Booth
            onClicked: rows.settings.look = SettingsViewModel.Booth
        }
        PlainButton {
            text: qsTr("Stall")
            secondLine: qsTr("dark")
            chosen: rows.settings.look === SettingsViewModel.Stall
            onClicked: rows.settings.look = SettingsViewModel.Stall
        }
        PlainButton {
            text: qsTr("Device")
            chosen: rows.settings.look === SettingsViewModel.Device
            onClicked: rows.settings.look = SettingsViewModel.Device
        }
    }
    Title { text: qsTr("Text size") }
    ActRow {
        width: parent.width

        PlainButton {
            text: qsTr("Usual")
            chosen: rows.settings.textPercent === 100
            onClicked: rows.settings.textPercent = 100
        }
        PlainButton {
            text: qsTr("Large")
            chosen: rows.settings.textPercent === 150
            onClicked: rows.settings.textPercent = 150
        }
    }
}
