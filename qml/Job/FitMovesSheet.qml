// FitMovesSheet: what was moved at each fastener, typed; it begins with what was proposed. fit: the
// view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property FitViewModel fit

    title: qsTr("What was moved")

    Connections {
        target: sheet.fit
        function onMovesKept() {
            sheet.close();
        }
    }
    Column {
        id: body
        width: parent.width
        spacing: Theme.gap

        Words {
            width: parent.width
            text: qsTr("From where it was, at each place. Empty: it was not moved there.")
            color: Theme.pencil
        }
        Repeater {
            model: sheet.fit.moveFields

            FaceField {
                required property string key
                required property string title
                required property var model

                objectName: "fitMoved_" + key
                width: body.width
                label: qsTr("%1, %2").arg(title).arg(model.label)
                text: model.text
                maximumLength: 8
                onEdited: text => sheet.fit.sayMove(key, text)
            }
        }
        Row {
            visible: sheet.fit.wrong !== ""
            width: parent.width
            spacing: 8

            StateShape {
                id: must
                kind: ShapeKind.Must
                size: 20
                ground: Theme.paper
            }
            Words {
                width: parent.width - must.width - 8
                text: sheet.fit.wrong
                bold: true
                size: Theme.note
                color: Theme.oxide
            }
        }
        SlabButton {
            objectName: "fitMovesKeep"
            width: parent.width
            height: implicitHeight
            text: qsTr("Keep, measure again")
            onClicked: sheet.fit.keepMoves()
        }
    }
}
