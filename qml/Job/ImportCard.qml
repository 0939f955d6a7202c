// ImportCard: pictures that are taken in from files: how far it is, Stop, and every one that was not
// kept, with the reason and what to do; brief: only the last of these. intake must be set. Nothing while
// there is nothing to say.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    required property PictureIntake intake
    property bool brief: false

    objectName: "importCard"
    visible: intake.importWords !== ""
    name: intake.importWords

    Column {
        id: inner
        width: parent.width
        spacing: 10

        Words {
            objectName: "importWords"
            width: parent.width
            text: card.intake.importWords
            mute: true
            bold: true
        }
        Rectangle {
            visible: card.intake.importing
            width: parent.width
            height: 8
            radius: Theme.corner
            color: Theme.chalk

            Rectangle {
                width: parent.width * card.intake.progress
                height: parent.height
                radius: Theme.corner
                color: Theme.ink
            }
        }
        Repeater {
            model: card.intake.refused

            Column {
                id: line

                required property int index
                required property string key
                required property string title
                required property string why
                required property string todo
                required property bool poor

                visible: !card.brief || index === card.intake.refusedCount - 1
                width: inner.width
                spacing: 2

                Words {
                    width: parent.width
                    text: line.title
                    bold: true
                    size: Theme.note
                    wrapMode: Text.WrapAtWordBoundaryOrAnywhere
                }
                Words {
                    width: parent.width
                    text: line.poor ? line.why : qsTr("%1 %2").arg(line.why).arg(line.todo)
                    size: Theme.note
                    wrapMode: Text.WrapAtWordBoundaryOrAnywhere
                }
                PlainButton {
                    objectName: "importKeep"
                    visible: line.poor
                    pressable: visible
                    width: Math.min(parent.width, Math.max(200, implicitWidth))
                    height: visible ? implicitHeight : 0
                    text: qsTr("Keep it anyway")
                    onClicked: card.intake.keepAnyway(line.key)
                }
            }
        }
        ActRow {
            width: parent.width

            PlainButton {
                objectName: "importStop"
                visible: card.intake.importing
                pressable: visible
                text: qsTr("Stop")
                onClicked: card.intake.stop()
            }
            PlainButton {
                objectName: "importKeepAll"
                visible: !card.intake.importing && card.intake.poorCount > 1
                pressable: visible
                text: qsTr("Keep all %1 anyway").arg(card.intake.poorCount)
                onClicked: card.intake.keepAllAnyway()
            }
            PlainButton {
                objectName: "importClose"
                visible: !card.intake.importing
                pressable: visible
                text: qsTr("Close")
                onClicked: card.intake.close()
            }
        }
    }
}
