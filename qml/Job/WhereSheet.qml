// WhereSheet: where a part of any car is: on which rack, or who has it. hand: the view model.
// show() opens it empty. Signal: carAsked(key), the key of what was found.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property HandOffViewModel hand

    signal carAsked(string key)

    function show() {
        hand.query = "";
        field.text = "";
        opened = true;
        field.focusField();
    }

    title: qsTr("Where is it?")

    Column {
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gap

        FaceField {
            id: field
            objectName: "whereField"
            width: parent.width
            iconName: "search"
            placeholder: qsTr("hood 206")
            label: qsTr("Part, plate, color, rack or name")
            maximumLength: 60
            onEdited: words => sheet.hand.query = words
        }
        Words {
            objectName: "whereCount"
            width: parent.width
            text: sheet.hand.foundWords
            color: Theme.pencil
        }
        Repeater {
            model: sheet.visible ? sheet.hand.found : null

            FactRow {
                id: hit

                required property int index
                required property string key
                required title
                required words
                required shape

                objectName: "where" + index
                width: parent?.width ?? 0
                onClicked: {
                    sheet.close();
                    sheet.carAsked(key);
                }
            }
        }
    }
}
