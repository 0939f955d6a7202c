// OpenCarStepColor: the shop's swatch strip, the code on the car's label, the name in the shop's
// words. Signal: answered (a swatch was chosen).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: step

    required property OpenCarViewModel form

    signal answered

    spacing: Theme.gap * 2

    Grid {
        id: strip
        width: parent.width
        columns: Math.max(2, Math.min(5, Math.floor((width + Theme.gap) / (116 * Theme.textScale))))
        columnSpacing: Theme.gap
        rowSpacing: Theme.gap

        Repeater {
            model: step.form.colors

            PaperCard {
                id: swatch

                required property string key
                required property string title
                required property color paint
                required chosen

                width: (strip.width - (strip.columns - 1) * strip.columnSpacing) / strip.columns
                pressable: true
                padding: 8
                name: chosen ? qsTr("Color %1, chosen").arg(title) : qsTr("Color %1").arg(title)
                onClicked: {
                    step.form.chooseColor(key);
                    step.answered();
                }

                Column {
                    width: parent.width
                    spacing: 6

                    Rectangle {
                        width: parent.width
                        height: 40
                        radius: Theme.corner
                        color: swatch.paint
                        border.width: 1.2
                        border.color: Theme.edge
                    }
                    Words {
                        width: parent.width
                        text: swatch.title
                        mute: true
                        bold: swatch.chosen
                        size: Theme.note
                        horizontalAlignment: Text.AlignHCenter
                    }
                }
            }
        }
    }
    FaceField {
        objectName: "openColorCode"
        width: parent.width
        label: qsTr("Code on the car's label")
        maximumLength: 24
        text: step.form.colorCode
        onEdited: text => step.form.colorCode = text
    }
    FaceField {
        objectName: "openColorName"
        width: parent.width
        label: qsTr("Name in the shop's words")
        maximumLength: 40
        text: step.form.colorName
        onEdited: text => step.form.colorName = text
    }
}
