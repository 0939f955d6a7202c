// WaitSheet: what the car waits for: a tap on the reason says it; then, if it is known, when it should
// go on. Opens when it is asked for. wait: the view model. Signal: whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property WaitViewModel wait

    signal whoAsked

    function wrongDay(): string {
        return wait.wrongField === "day" ? wait.wrongWords : "";
    }
    function wrongTime(): string {
        return wait.wrongField === "time" ? wait.wrongWords : "";
    }

    title: qsTr("What does it wait for?")
    onClosed: wait.openWait("")

    Connections {
        target: sheet.wait
        function onAsked() {
            day.text = "";
            time.text = "";
            sheet.opened = true;
        }
    }

    Column {
        id: form
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gutter

        Words {
            width: parent.width
            text: sheet.wait.carTitle
            color: Theme.pencil
        }
        Flow {
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: sheet.wait.reasons

                PlainButton {
                    required property int index
                    required property string key
                    required property string title
                    required property bool waits

                    objectName: "waitReason" + index
                    width: (form.width - Theme.gap) / 2
                    height: implicitHeight
                    text: title
                    secondLine: waits ? qsTr("waits now") : ""
                    shape: waits ? ShapeKind.Waits : ShapeKind.None
                    chosen: sheet.wait.openReason === key
                    onClicked: sheet.wait.mayKeep ? sheet.wait.say(key) : sheet.whoAsked()
                }
            }
        }
        Column {
            width: parent.width
            visible: sheet.wait.openReason !== ""
            spacing: Theme.gap

            Words {
                objectName: "waitOpenTitle"
                width: parent.width
                text: sheet.wait.openTitle
                bold: true
            }
            Flow {
                width: parent.width
                spacing: Theme.gap

                Repeater {
                    model: sheet.wait.usual

                    PlainButton {
                        required property int index
                        required property string modelData

                        objectName: "waitUsual" + index
                        width: Math.min(form.width, Math.max(104, implicitWidth))
                        height: implicitHeight
                        text: modelData
                        onClicked: sheet.wait.expectUsual(index)
                    }
                }
            }
            FaceField {
                id: day
                objectName: "waitDay"
                width: parent.width
                label: qsTr("Or on the day")
                placeholder: qsTr("today; 9/24/2026")
                wrong: sheet.wrongDay()
            }
            FaceField {
                id: time
                objectName: "waitTime"
                width: parent.width
                label: qsTr("At")
                placeholder: qsTr("15:40")
                wrong: sheet.wrongTime()
            }
            PlainButton {
                objectName: "waitExpect"
                width: parent.width
                height: implicitHeight
                text: qsTr("Expected then")
                onClicked: sheet.wait.expect(day.text, time.text)
            }
            PlainButton {
                objectName: "waitGoesOn"
                width: parent.width
                height: implicitHeight
                text: qsTr("It goes on")
                onClicked: {
                    sheet.wait.goesOn(sheet.wait.openReason);
                    sheet.close();
                }
            }
        }
        Repeater {
            model: sheet.wait.waits

            Words {
                required property string title
                required property string words

                width: form.width
                text: qsTr("%1, %2").arg(title).arg(words)
            }
        }
        Words {
            width: parent.width
            visible: text !== ""
            text: sheet.wait.beforeWords
            size: Theme.note
            color: Theme.pencil
        }
    }
}
