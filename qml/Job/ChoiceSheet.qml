// ChoiceSheet: one of a few words. choices: words; current: the chosen row, -1 none. Signal:
// chose(row), the sheet closes by itself.
pragma ComponentBehavior: Bound
import QtQuick
import Jambline.Theme

Sheet {
    id: sheet

    property var choices: []
    property int current: -1

    signal chose(int row)

    Column {
        width: parent.width
        spacing: Theme.gap

        Repeater {
            model: sheet.choices

            PlainButton {
                required property int index
                required property string modelData
                objectName: "choice" + index
                width: parent.width
                height: implicitHeight
                text: modelData
                chosen: sheet.current === index
                onClicked: {
                    sheet.chose(index);
                    sheet.close();
                }
            }
        }
    }
}
