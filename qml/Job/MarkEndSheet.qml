// MarkEndSheet: how the work on a mark ended. mark: its key; "": it is chosen first, for a
// burn-through.
pragma ComponentBehavior: Bound
import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property WalkViewModel walk
    property string mark: ""
    readonly property bool asking: walk.mode === WalkViewModel.Ask

    title: mark === "" ? qsTr("Where is the burn-through?") : walk.titleOf(mark)

    Column {
        width: parent.width
        spacing: Theme.gap

        PlainButton {
            objectName: "markGone"
            width: parent.width
            visible: sheet.mark !== "" && sheet.asking
            pressable: visible
            text: qsTr("Gone")
            onClicked: {
                sheet.walk.gone(sheet.mark);
                sheet.close();
            }
        }
        PlainButton {
            objectName: "markCameBack"
            width: parent.width
            visible: sheet.mark !== "" && sheet.asking
            pressable: visible
            text: qsTr("Came back")
            secondLine: qsTr("it is worked on once more")
            onClicked: {
                sheet.walk.cameBack(sheet.mark);
                sheet.close();
            }
        }
        PlainButton {
            objectName: "markBurned"
            width: parent.width
            visible: sheet.mark !== ""
            pressable: visible
            shape: ShapeKind.Must
            beside: true
            text: qsTr("Burn-through")
            secondLine: qsTr("stop at once, the panel goes to redo")
            onClicked: {
                sheet.walk.burnThrough(sheet.mark);
                sheet.close();
            }
        }
        Repeater {
            model: sheet.mark === "" ? sheet.walk.marks : null

            PlainButton {
                required property string key
                required property string title
                required property string place

                objectName: "burnedMark"
                width: parent.width
                text: title
                secondLine: place
                onClicked: {
                    sheet.walk.burnThrough(key);
                    sheet.close();
                }
            }
        }
    }
}
