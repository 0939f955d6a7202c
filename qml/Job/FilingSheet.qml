// FilingSheet: where a picture belongs: stage, panel, shot and mark; each opens its choices. look:
// the view model, whose picture is filed.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property LookViewModel look
    property int asked: -1  // a row of parts
    readonly property var parts: [
        { title: qsTr("Stage"), choices: look.stageChoices, current: look.filedStage },
        { title: qsTr("Panel"), choices: look.panelChoices, current: look.filedPanel },
        { title: qsTr("Picture on the list"), choices: look.shotChoices, current: look.filedShot },
        { title: qsTr("Mark"), choices: look.markChoices, current: look.filedMark }
    ]

    function choose(part: int, row: int) {
        if (part === 0)
            look.chooseStage(row);
        else if (part === 1)
            look.choosePanel(row);
        else if (part === 2)
            look.chooseShot(row);
        else
            look.chooseMark(row);
        asked = -1;
    }

    title: qsTr("File it elsewhere")
    onOpenedChanged: {
        asked = -1;
        if (opened)
            look.startFiling();
    }

    Connections {
        target: sheet.look
        function onFiled() {
            sheet.close();
        }
    }

    Column {
        id: body
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gutter

        Repeater {
            model: 4

            Column {
                id: part

                required property int index
                readonly property var said: sheet.parts[index]

                width: body.width
                spacing: Theme.gap
                visible: said.choices.length > 1 || said.current > 0

                PlainButton {
                    objectName: "filing" + part.index
                    width: parent.width
                    height: implicitHeight
                    text: part.said.choices[part.said.current] ?? ""
                    secondLine: part.said.title
                    name: qsTr("%1: %2. Opens the choices.").arg(part.said.title).arg(text)
                    chosen: sheet.asked === part.index
                    onClicked: sheet.asked = sheet.asked === part.index ? -1 : part.index
                }
                Flow {
                    width: parent.width
                    visible: sheet.asked === part.index
                    spacing: Theme.gap

                    Repeater {
                        model: sheet.asked === part.index ? part.said.choices : []

                        PlainButton {
                            required property int index
                            required property string modelData

                            objectName: "filingChoice" + index
                            width: Math.min(body.width, Math.max(112, implicitWidth))
                            height: implicitHeight
                            text: modelData
                            chosen: part.said.current === index
                            onClicked: sheet.choose(part.index, index)
                        }
                    }
                }
            }
        }
        SlabButton {
            objectName: "filingKeep"
            width: parent.width
            height: implicitHeight
            waits: !sheet.look.filedElsewhere
            text: qsTr("File it here")
            secondLine: waits ? qsTr("it is here already") : ""
            onClicked: sheet.look.fileHere()
        }
    }
}
