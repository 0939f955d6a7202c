// SumSheet: a number opened to its sum: the number, what it came from as rows, method, source with
// year, seed. sum: what a view model shows in it; set opened after it was filled.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property SumRows sum

    title: sum.title

    Column {
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gutter

        Words {
            objectName: "sumFigure"
            width: parent.width
            text: sheet.sum.figure
            bold: true
            size: Theme.title
        }
        Words {
            width: parent.width
            visible: text !== ""
            text: sheet.sum.note
        }
        Words {
            width: parent.width
            text: sheet.sum.method
            color: Theme.pencil
        }
        Column {
            id: rows
            width: parent.width

            Repeater {
                model: sheet.sum.rows

                Item {
                    id: line

                    required property string name
                    required property string value
                    required property string source
                    readonly property bool stacked: said.natural + figure.natural + 16 > width

                    width: rows.width
                    height: from.y + from.height + 10
                    Accessible.role: Accessible.Row
                    Accessible.name: qsTr("%1, %2, %3").arg(name).arg(value).arg(source)

                    Rectangle {
                        width: parent.width
                        height: 1
                        color: Theme.chalk
                    }
                    Words {
                        id: said
                        y: 8
                        width: line.stacked ? parent.width : Math.min(natural, parent.width)
                        text: line.name
                        mute: true
                    }
                    Words {
                        id: figure
                        y: line.stacked ? said.y + said.height : said.y
                        x: parent.width - width
                        width: Math.min(natural, parent.width)
                        horizontalAlignment: Text.AlignRight
                        text: line.value
                        mute: true
                        bold: true
                    }
                    Words {
                        id: from
                        y: line.stacked ? figure.y + figure.height : said.y + said.height
                        width: parent.width
                        text: line.source
                        mute: true
                        size: Theme.note
                        color: Theme.pencil
                    }
                }
            }
        }
        Words {
            width: parent.width
            visible: sheet.sum.seed !== ""
            text: qsTr("Drawn with seed %1: the same seed gives the same number.").arg(sheet.sum.seed)
            size: Theme.note
            color: Theme.pencil
        }
    }
}
