// AmendSheet: one span's or one tap's time is amended: which end, the new time on big keys, the day
// when it was another one, and why. What the clock said stays beside it. Opens when amend shows
// something. Signal: whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property AmendClockViewModel amend
    property bool typing: true  // the keys make room for the reasons once four digits are there

    signal whoAsked

    function wrongTime(): string {
        return amend.wrongField === "time" ? amend.wrongWords : "";
    }
    function wrongReason(): string {
        return amend.wrongField === "reason" ? amend.wrongWords : "";
    }

    title: qsTr("Amend the clock")
    onClosed: amend.close()

    Connections {
        target: sheet.amend
        function onChanged() {
            if (sheet.amend.shown && !sheet.opened) {
                why.text = "";
                sheet.typing = true;
            }
            sheet.opened = sheet.amend.shown;
            if (pad.typed !== sheet.amend.typed)
                pad.typed = sheet.amend.typed;
        }
    }

    Column {
        id: form
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gutter

        Words {
            objectName: "amendTitle"
            width: parent.width
            text: sheet.amend.title
            bold: true
            size: Theme.lead
        }
        Words {
            width: parent.width
            text: sheet.amend.who
            color: Theme.pencil
        }
        Flow {
            id: ends
            width: parent.width
            spacing: Theme.gap

            Repeater {
                id: list
                model: sheet.amend.ends

                PlainButton {
                    required property int index
                    required property int key
                    required property string title
                    required property string time
                    required property string said
                    required property bool isChosen
                    required property string spoken

                    objectName: "amendEnd" + index
                    width: list.count > 1 ? (ends.width - Theme.gap) / 2 : ends.width
                    height: implicitHeight
                    beside: false
                    text: qsTr("%1 %2").arg(title).arg(time)
                    secondLine: said
                    name: spoken
                    chosen: isChosen
                    onClicked: {
                        sheet.amend.choose(key);
                        sheet.typing = true;
                    }
                }
            }
        }
        KeyPad {
            id: pad
            objectName: "amendPad"
            width: parent.width
            visible: sheet.typing
            kind: KeyPad.Clock
            digits: 4
            label: qsTr("It was at, on %1").arg(sheet.amend.dayWords)
            unitText: sheet.amend.countsWords
            wrong: sheet.wrongTime()
            onTypedChanged: sheet.amend.typed = typed
            onComplete: {
                if (sheet.amend.newTime !== "")
                    sheet.typing = false;
            }
        }
        PlainButton {
            objectName: "amendTime"
            width: parent.width
            height: implicitHeight
            visible: !sheet.typing
            pressable: visible
            text: qsTr("%1, %2").arg(sheet.amend.dayWords).arg(sheet.amend.newTime)
            secondLine: sheet.amend.countsWords
            onClicked: sheet.typing = true
        }
        Words {
            objectName: "amendWrong"
            width: parent.width
            visible: !sheet.typing && text !== ""
            text: sheet.wrongTime()
            bold: true
            color: Theme.oxide
        }
        ActRow {
            width: parent.width

            PlainButton {
                objectName: "amendDayBefore"
                text: qsTr("Day before")
                onClicked: sheet.amend.otherDay(-1)
            }
            PlainButton {
                objectName: "amendDayAfter"
                text: qsTr("Day after")
                onClicked: sheet.amend.otherDay(1)
            }
        }
        Words {
            width: parent.width
            text: qsTr("Why?")
            bold: true
        }
        Flow {
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: sheet.amend.reasons

                PlainButton {
                    required property int index
                    required property string modelData

                    objectName: "amendReason" + index
                    width: Math.min(form.width, Math.max(104, implicitWidth))
                    height: implicitHeight
                    text: modelData
                    chosen: sheet.amend.reason === index
                    onClicked: sheet.amend.chooseReason(index)
                }
            }
        }
        FaceField {
            id: why
            objectName: "amendWhy"
            width: parent.width
            visible: sheet.amend.reason < 0
            label: qsTr("Or in words")
            maximumLength: 200
            wrong: sheet.wrongReason()
        }
        SlabButton {
            objectName: "amendKeep"
            width: parent.width
            height: implicitHeight
            text: sheet.amend.mainText
            secondLine: !sheet.amend.mayKeep ? qsTr("say who you are first") : qsTr("what the clock said stays beside it")
            waits: !sheet.amend.mayKeep
            onRefused: sheet.whoAsked()
            onClicked: sheet.amend.keep(why.text)
        }
    }
}
