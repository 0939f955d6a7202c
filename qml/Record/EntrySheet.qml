// EntrySheet: one entry as it is kept: number, device, hash, clocks, flags, its raw record; and "Take
// back" with its reason; of a picture it shows the picture. timeLine: the view model, whose open entry is shown.
// Signal: pictureAsked(picture).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Job
import Jambline.Screens

Sheet {
    id: sheet

    required property TimeLineViewModel timeLine
    property bool asking: false

    signal pictureAsked(string picture)

    title: qsTr("Entry")
    onClosed: {
        asking = false;
        timeLine.close();
    }

    Connections {
        target: sheet.timeLine
        function onTakenBack() {
            sheet.close();
        }
    }

    Column {
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gutter

        Words {
            objectName: "entryWords"
            width: parent.width
            text: sheet.timeLine.openWords
            bold: true
            size: Theme.title
            font.strikeout: sheet.timeLine.openTakenBack !== ""
        }
        Words {
            width: parent.width
            text: sheet.timeLine.openLine
            color: Theme.pencil
        }
        Words {
            width: parent.width
            visible: text !== ""
            text: sheet.timeLine.openTakenBack
            color: Theme.oxide
        }
        NoteBanner {
            objectName: "entryRefused"
            width: parent.width
            visible: sheet.timeLine.openRefused !== ""
            kind: NoteBanner.Disputed
            happened: sheet.timeLine.openRefused
            stands: qsTr("It stays in the log as it was said, and nothing goes by it.")
        }
        Words {
            objectName: "entryPlace"
            width: parent.width
            visible: text !== ""
            text: sheet.timeLine.openPlace
            color: Theme.pencil
        }
        PictureFrame {
            objectName: "entryPicture"
            width: parent.width
            height: visible ? Math.round(width * 0.66) : 0
            visible: sheet.timeLine.openFile !== "" && sheet.timeLine.store !== null
            whole: true
            store: sheet.timeLine.store
            file: sheet.timeLine.openFile
        }
        PlainButton {
            objectName: "entryLook"
            width: parent.width
            height: implicitHeight
            visible: sheet.timeLine.openPicture !== "" && sheet.timeLine.store !== null
            pressable: visible
            text: qsTr("Look at the picture")
            iconName: "photo"
            beside: true
            onClicked: {
                const picture = sheet.timeLine.openPicture;
                sheet.close();
                sheet.pictureAsked(picture);
            }
        }
        NoteBanner {
            width: parent.width
            visible: sheet.timeLine.openDoubt !== ""
            kind: NoteBanner.Due
            happened: qsTr("The time may be wrong: %1.").arg(sheet.timeLine.openDoubt)
            stands: qsTr("The order of this device's entries holds all the same.")
        }
        PlainButton {
            objectName: "amendEntry"
            width: parent.width
            height: implicitHeight
            visible: sheet.timeLine.openMayBeAmended && !sheet.asking
            pressable: visible
            text: qsTr("It was at another time")
            secondLine: qsTr("both times stay")
            onClicked: sheet.timeLine.amendOpen()
        }
        PlainButton {
            objectName: "takeBack"
            width: parent.width
            visible: sheet.timeLine.openMayBeTakenBack && !sheet.asking
            text: qsTr("Take back")
            iconName: "undo"
            beside: true
            onClicked: sheet.asking = true
        }
        Column {
            width: parent.width
            spacing: Theme.gap
            visible: sheet.asking && sheet.timeLine.openMayBeTakenBack

            Words {
                width: parent.width
                text: qsTr("Why is it taken back? The entry stays and shows it.")
            }
            Flow {
                width: parent.width
                spacing: Theme.gap

                Repeater {
                    model: sheet.timeLine.reasons

                    PlainButton {
                        required property int index
                        required property string modelData

                        objectName: "reason_" + index
                        width: Math.min(sheet.width - 2 * Theme.gutter, Math.max(112, implicitWidth))
                        text: modelData
                        name: qsTr("Take back, %1").arg(modelData)
                        onClicked: sheet.timeLine.takeBack(index)
                    }
                }
            }
        }
        Words {
            width: parent.width
            text: qsTr("As it is kept")
            bold: true
            Accessible.role: Accessible.Heading
        }
        Repeater {
            model: sheet.timeLine.details

            DetailLine {
                width: parent.width
            }
        }
        RawEntry {
            width: parent.width
            visible: sheet.timeLine.rawRead
            timeLine: sheet.timeLine
        }
    }
}
