// CasesSheet: the cars and entries that one row rests on, most first. ask: the view model, whose open
// row is shown. Signals: carAsked(jobId), entryAsked(jobId, entryId).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property QuestionViewModel ask

    signal carAsked(string jobId)
    signal entryAsked(string jobId, string entryId)

    title: ask.openTitle
    onClosed: ask.closeRow()

    Column {
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gutter

        Words {
            objectName: "casesNote"
            width: parent.width
            text: sheet.ask.openNote
        }
        ListView {
            id: list
            objectName: "cases"
            width: parent.width
            height: Math.min(contentHeight, Math.max(240, sheet.height - 220))
            model: sheet.ask.cases
            clip: true
            cacheBuffer: 0  // nothing is made ahead of sight that a closed row would have to take back
            spacing: Theme.gap
            boundsBehavior: Flickable.StopAtBounds
            interactive: contentHeight > height
            Accessible.role: Accessible.List
            Accessible.name: sheet.ask.openTitle

            delegate: PaperCard {
                id: one

                required property int index
                required property string job
                required property string entry
                required property string plate
                required property string when
                required property string words
                required property string spoken

                objectName: "case" + index
                width: list.width
                pressable: true
                name: entry === "" ? qsTr("%1, opens the car").arg(spoken) : qsTr("%1, opens the entry").arg(spoken)
                onClicked: {
                    if (entry === "")
                        sheet.carAsked(job);
                    else
                        sheet.entryAsked(job, entry);
                }

                Item {
                    width: parent.width
                    height: Math.max(what.height, number.height)

                    Column {
                        id: what
                        width: parent.width - number.width - 12
                        anchors.verticalCenter: parent.verticalCenter

                        Words {
                            width: parent.width
                            text: one.plate
                            mute: true
                            bold: true
                        }
                        Words {
                            width: parent.width
                            text: one.entry === "" ? one.when : qsTr("%1, the entry").arg(one.when)
                            mute: true
                            size: Theme.note
                            color: Theme.pencil
                        }
                    }
                    Words {
                        id: number
                        width: Math.min(natural, parent.width * 0.5)
                        anchors.right: parent.right
                        anchors.verticalCenter: parent.verticalCenter
                        horizontalAlignment: Text.AlignRight
                        text: one.words
                        mute: true
                    }
                }
            }
        }
        Words {
            width: parent.width
            visible: sheet.ask.caseCount === 0
            text: qsTr("No car stands behind this row in this time.")
            color: Theme.pencil
        }
    }
}
