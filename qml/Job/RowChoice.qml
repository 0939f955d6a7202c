// RowChoice: one of some rows with the roles key, title, words and chosen. rows: a model; hint: why
// it is empty. Put more acts inside; they stand below the rows. Signal: chose(key), the sheet closes
// by itself unless `stays`.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme

Sheet {
    id: sheet

    property var rows: null
    property string hint: ""
    property bool stays: false
    default property alias more: below.data

    signal chose(string key)

    content: Column {
        width: parent.width
        spacing: Theme.gap

        Words {
            width: parent.width
            visible: list.count === 0 && text !== ""
            text: sheet.hint
            color: Theme.pencil
        }
        Repeater {
            id: list
            model: sheet.rows

            PlainButton {
                required property int index
                required property string key
                required property string title
                required property string words
                required chosen

                objectName: "row" + index
                width: parent.width
                height: implicitHeight
                text: title
                secondLine: words
                onClicked: {
                    sheet.chose(key);
                    if (!sheet.stays)
                        sheet.close();
                }
            }
        }
        Column {
            id: below
            width: parent.width
            spacing: Theme.gap
        }
    }
}
