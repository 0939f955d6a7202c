// LeftoversSheet: each picture that is on the disk and never got its entry: keep it where it was meant
// to go, or let it go. leftovers: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Job
import Jambline.Screens

Sheet {
    id: sheet

    property LeftoversViewModel leftovers: null

    title: qsTr("Taken but not kept")

    Connections {
        target: sheet.leftovers
        function onChanged() {
            if (sheet.leftovers.count === 0)
                sheet.close();
        }
    }

    Column {
        id: body
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gutter

        Words {
            width: parent.width
            text: qsTr("The program ended between the picture and its entry. The files are whole.")
            color: Theme.pencil
        }
        Repeater {
            model: sheet.opened && sheet.leftovers ? sheet.leftovers.rows : null

            PaperCard {
                id: left

                required property string file
                required property string title
                required property string line
                required property bool canKeep
                required property bool asked
                property bool letGo: false  // pressed once

                objectName: "leftCard"
                width: body.width

                Column {
                    width: parent.width
                    spacing: Theme.gap

                    PictureFrame {
                        width: parent.width
                        height: Math.round(width * 0.6)
                        whole: true
                        store: sheet.leftovers ? sheet.leftovers.store : null
                        file: left.file
                    }
                    Words {
                        width: parent.width
                        text: left.title
                        bold: true
                    }
                    Words {
                        width: parent.width
                        text: left.line
                        size: Theme.note
                        color: Theme.pencil
                    }
                    ActRow {
                        width: parent.width
                        visible: !left.asked

                        PlainButton {
                            objectName: "leftGo"
                            text: left.letGo ? qsTr("Gone for good") : qsTr("Not needed")
                            secondLine: left.letGo ? qsTr("press again") : ""
                            name: qsTr("%1: %2").arg(text).arg(left.title)
                            onClicked: {
                                if (left.letGo)
                                    sheet.leftovers.letGo(left.file);
                                left.letGo = true;
                            }
                        }
                        SlabButton {
                            objectName: "leftKeep"
                            visible: left.canKeep
                            pressable: visible
                            text: qsTr("Keep")
                            name: qsTr("Keep: %1").arg(left.title)
                            onClicked: sheet.leftovers.keep(left.file)
                        }
                    }
                }
            }
        }
    }
}
