// GlassAirSheet: the air where the glass sets: temperature, surface and humidity. The coldest and the
// driest since the glass was set count. bond: the view model.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property BondViewModel bond

    title: qsTr("The air here")
    onOpenedChanged: if (opened) air.focusField()

    Connections {
        target: sheet.bond
        function onAirKept() {
            sheet.close();
            for (const field of [air, surface, humidity])
                field.text = "";
        }
    }

    Column {
        width: parent.width
        spacing: Theme.gap

        FaceField {
            id: air
            objectName: "glassAir"
            width: parent.width
            label: qsTr("Air")
            tail: sheet.bond.unit
            maximumLength: 8
            wrong: sheet.bond.airRefusal
        }
        FaceField {
            id: surface
            objectName: "glassSurface"
            width: parent.width
            label: qsTr("Flange and glass")
            tail: sheet.bond.unit
            maximumLength: 8
            wrong: sheet.bond.surfaceRefusal
        }
        FaceField {
            id: humidity
            objectName: "glassHumidity"
            width: parent.width
            label: qsTr("Relative humidity")
            tail: qsTr("%")
            maximumLength: 8
            wrong: sheet.bond.humidityRefusal
        }
        SlabButton {
            objectName: "glassAirLog"
            width: parent.width
            height: implicitHeight
            text: qsTr("Log the air")
            onClicked: sheet.bond.logAir(air.text, surface.text, humidity.text)
        }
    }
}
