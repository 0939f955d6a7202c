// GunAnswers: the answers to one item before the gun. A must can be passed over by name, with a
// reason and, if one likes, a note; a stop cannot. check: the view model; it opens when check asks.
pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property BeforeGunViewModel check

    title: check.openTitle

    Connections {
        target: sheet.check
        function onOpened() {
            note.text = sheet.check.openNote;
            sheet.opened = true;
        }
    }

    Column {
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gap

        Words {
            objectName: "gunOpenWords"
            width: parent.width
            visible: text !== ""
            text: sheet.check.openWords
        }
        Words {
            width: parent.width
            visible: sheet.check.openTakesNote
            text: sheet.check.openWho
            size: Theme.note
            color: Theme.pencil
        }
        FaceField {
            id: note
            objectName: "gunNote"
            width: parent.width
            visible: sheet.check.openTakesNote
            label: qsTr("Note, if you like")
            maximumLength: 200
        }
        GridLayout {
            id: grid
            width: parent.width
            columns: sheet.check.openTakesNote && Theme.textScale <= 1.2 ? 2 : 1
            columnSpacing: Theme.gap
            rowSpacing: Theme.gap

            Repeater {
                model: sheet.check.openAnswers

                PlainButton {
                    required property int index
                    required property string modelData

                    objectName: "gunAnswer" + index
                    Layout.columnSpan: sheet.check.openNow && index === 0 ? grid.columns : 1
                    text: modelData
                    chosen: sheet.check.openAnswer === index
                    onClicked: {
                        sheet.check.choose(index, note.text);
                        sheet.close();
                    }
                }
            }
        }
    }
}
