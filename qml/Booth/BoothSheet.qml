// BoothSheet: a booth's name and kind, and what was done to it, newest first; a row opens for a
// correction. A new booth without the rows. show() fills the form from the view model.
// Signals: factsAsked(booth), what is known of it; eventAsked(event); whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property BoothViewModel booth
    property int kind: 0
    readonly property bool fresh: booth.openName === ""
    readonly property bool untouched: !fresh && field.text.trim() === booth.openName && kind === booth.openKind

    property string key: ""

    signal factsAsked(string booth)
    signal eventAsked(string event)
    signal whoAsked

    function show(which: string) {
        key = which;
        field.text = booth.openName;
        kind = booth.openKind;
        opened = true;
        if (fresh)
            field.focusField();
    }
    function keep() {
        if (!booth.mayKeep)
            whoAsked();
        else
            booth.keepBooth(field.text, kind);
    }

    title: fresh ? qsTr("New booth") : booth.openName

    Connections {
        target: sheet.booth
        function onBoothKept() {
            sheet.close();
        }
    }

    Column {
        id: form
        width: parent.width
        spacing: 12

        FaceField {
            id: field
            objectName: "boothName"
            width: parent.width
            label: qsTr("What the booth is called")
            placeholder: qsTr("Booth 1")
            maximumLength: 40
            onAccepted: sheet.keep()
        }
        Words {
            width: parent.width
            text: qsTr("How the air moves")
            bold: true
            size: Theme.note
            color: Theme.pencil
        }
        Grid {
            id: kinds
            width: parent.width
            columns: width < 300 * Theme.textScale ? 1 : 2
            columnSpacing: Theme.gap
            rowSpacing: Theme.gap

            Repeater {
                model: sheet.booth.kindCount

                PlainButton {
                    required property int index

                    objectName: "boothKind" + index
                    width: (kinds.width - (kinds.columns - 1) * kinds.columnSpacing) / kinds.columns
                    height: implicitHeight
                    text: sheet.booth.kindWords(index)
                    chosen: sheet.kind === index
                    onClicked: sheet.kind = index
                }
            }
        }
        SlabButton {
            objectName: "boothKeep"
            width: parent.width
            height: implicitHeight
            visible: !sheet.untouched
            pressable: visible
            text: sheet.fresh ? qsTr("Add this booth") : qsTr("Change this booth")
            secondLine: waits ? qsTr("say what it is called first") : ""
            waits: field.text.trim() === ""
            onClicked: sheet.keep()
        }
        PlainButton {
            objectName: "boothFacts"
            width: parent.width
            height: implicitHeight
            visible: !sheet.fresh
            pressable: visible
            text: qsTr("What is known of it")
            secondLine: sheet.kind === 5 ? qsTr("volume, exhaust, required velocity") : qsTr("volume, exhaust, required velocity, time to clear")
            onClicked: sheet.factsAsked(sheet.key)
        }
        Words {
            width: parent.width
            visible: !sheet.fresh
            topPadding: 8
            text: sheet.booth.openEvents === 0 ? qsTr("Nothing was logged on it yet") : qsTr("What was done to it. Tap one to correct it.")
            bold: true
        }
        Repeater {
            model: sheet.fresh ? null : sheet.booth.events

            PaperCard {
                id: line

                required property int index
                required property string key
                required property string title
                required property string icon
                required property string note

                objectName: "boothLine" + index
                width: form.width
                pressable: !sheet.booth.readOnly
                name: qsTr("%1, %2. Corrects it.").arg(title).arg(note)
                onClicked: sheet.eventAsked(key)

                Item {
                    width: parent.width
                    height: Math.max(picture.height, words.height)

                    Icon {
                        id: picture
                        source: line.icon
                        anchors.verticalCenter: parent.verticalCenter
                    }
                    Column {
                        id: words
                        x: picture.width + 12
                        width: parent.width - x
                        anchors.verticalCenter: parent.verticalCenter
                        spacing: 2

                        Words {
                            width: parent.width
                            text: line.title
                            mute: true
                            bold: true
                        }
                        Words {
                            width: parent.width
                            text: line.note
                            mute: true
                            size: Theme.note
                            color: Theme.pencil
                        }
                    }
                }
            }
        }
    }
}
