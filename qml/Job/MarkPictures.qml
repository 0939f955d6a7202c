// MarkPictures: the pictures of one mark in a row. look: the view model; mark: which. Signal:
// lookAsked(picture, among).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Flow {
    id: row

    property LookViewModel look: null
    property string mark: ""

    signal lookAsked(string picture, var among)

    function show() {
        if (look)
            look.mark = mark;
    }

    visible: look !== null && look.ofMarkCount > 0 && look.mark === mark
    spacing: Theme.gap
    onMarkChanged: show()
    Component.onCompleted: show()

    Repeater {
        model: row.look ? row.look.ofMark : null

        Pressable {
            id: one

            required property string picture
            required property string file
            required property string spoken

            objectName: "markPicture"
            width: 96
            height: 76
            name: spoken
            onClicked: row.lookAsked(picture, row.look.ofMarkKeys())

            PictureFrame {
                anchors.fill: parent
                store: row.look ? row.look.store : null
                file: one.file
            }
            Rectangle {
                anchors.fill: parent
                color: "transparent"
                border.width: Theme.line
                border.color: Theme.edge
            }
        }
    }
}
