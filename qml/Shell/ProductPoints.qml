// ProductPoints: the points of one milestone, a time at a temperature each, or the rows of a drive-away
// table with humidity besides. What contradicts itself is said here and the page stays open.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: page

    required property ProductViewModel products
    readonly property bool folded: width < 300 * Theme.textScale

    spacing: Theme.gap

    Words {
        width: parent.width
        text: page.products.withHumidity
            ? qsTr("As the adhesive's maker prints it. Nothing between the rows is guessed: the colder and the drier row counts.")
            : qsTr("One point or more, as the sheet prints them. Nothing outside them is guessed: the stricter way counts.")
        color: Theme.pencil
    }
    FaceField {
        objectName: "tableCase"
        visible: page.products.withHumidity
        width: parent.width
        height: visible ? implicitHeight : 0
        label: qsTr("Airbag and belt case, in the maker's words")
        placeholder: qsTr("two airbags, belts fastened")
        text: page.products.caseName
        readOnly: !page.products.manager
        maximumLength: 80
        onEdited: words => page.products.sayCase(words)
    }
    Repeater {
        model: page.products.rows

        PaperCard {
            id: line

            required property int index
            required property string key
            required property string temperature
            required property string humidity
            required property string minutes
            required property string wrong

            width: page.width
            padding: 8
            must: wrong !== ""

            Column {
                width: parent.width
                spacing: 6

                Grid {
                    id: cells

                    // A point in one line with the way out; a row with humidity in two.
                    readonly property real out: !page.products.withHumidity && page.products.manager ? Theme.touch + spacing : 0
                    readonly property real cell: columns === 1 ? width : (width - spacing - out) / 2

                    width: parent.width
                    columns: page.folded ? 1 : page.products.withHumidity ? 2 : 3
                    spacing: 6
                    verticalItemAlignment: Grid.AlignBottom

                    FaceField {
                        objectName: "pointTemperature" + line.index
                        width: cells.cell
                        label: qsTr("At, %1").arg(page.products.unit)
                        text: line.temperature
                        readOnly: !page.products.manager
                        maximumLength: 8
                        onEdited: words => page.products.sayRow(line.key, 0, words)
                    }
                    FaceField {
                        objectName: "pointHumidity" + line.index
                        visible: page.products.withHumidity
                        width: cells.cell
                        label: qsTr("Humidity, %")
                        text: line.humidity
                        readOnly: !page.products.manager
                        maximumLength: 8
                        onEdited: words => page.products.sayRow(line.key, 1, words)
                    }
                    FaceField {
                        objectName: "pointMinutes" + line.index
                        width: cells.cell
                        label: qsTr("Time")
                        placeholder: qsTr("16 h")
                        text: line.minutes
                        readOnly: !page.products.manager
                        maximumLength: 20
                        onEdited: words => page.products.sayRow(line.key, 2, words)
                    }
                    PlainButton {
                        objectName: "pointDrop" + line.index
                        visible: page.products.manager
                        pressable: visible
                        width: Theme.touch
                        iconName: "erase"
                        name: qsTr("Take out row %1").arg(line.index + 1)
                        onClicked: page.products.dropRow(line.key)
                    }
                }
                Row {
                    width: parent.width
                    visible: line.wrong !== ""
                    spacing: 8

                    StateShape {
                        id: mark
                        kind: ShapeKind.Must
                        size: 20
                    }
                    Words {
                        objectName: "pointWrong"
                        width: parent.width - mark.width - 8
                        text: line.wrong
                        bold: true
                        size: Theme.note
                        color: Theme.oxide
                    }
                }
            }
        }
    }
    NoteBanner {
        objectName: "rowsWrong"
        width: parent.width
        visible: page.products.rowsWrong !== ""
        kind: NoteBanner.Danger
        happened: page.products.rowsWrong
        stands: qsTr("What was typed is still there. The product is as it was.")
    }
    PlainButton {
        objectName: "pointAdd"
        visible: page.products.manager
        pressable: visible
        width: parent.width
        height: visible ? implicitHeight : 0
        text: page.products.withHumidity ? qsTr("One row more") : qsTr("One point more")
        onClicked: page.products.addRow()
    }
    PlainButton {
        objectName: "tableDrop"
        visible: page.products.withHumidity && page.products.manager
        pressable: visible
        width: parent.width
        height: visible ? implicitHeight : 0
        text: qsTr("Take this table out")
        onClicked: page.products.dropTable()
    }
    SlabButton {
        objectName: "pointsKeep"
        width: parent.width
        height: implicitHeight
        text: page.products.manager ? qsTr("These are its times") : qsTr("Back to the product")
        onClicked: page.products.back()
    }
}
