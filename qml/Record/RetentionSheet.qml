// RetentionSheet: how long a class of records is kept here: a manager types years, everybody reads the
// usual time and its source. show(key) fills it.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property RetentionViewModel keep

    function show(key: string) {
        keep.open(key);
        years.text = keep.years;
        opened = true;
    }

    title: keep.title

    component Line: Words {
        width: parent ? parent.width : 0
    }

    Connections {
        target: sheet.keep
        function onKept() {
            sheet.close();
        }
    }

    Column {
        width: parent.width
        spacing: Theme.gap
        bottomPadding: Theme.gutter

        Line { text: sheet.keep.covers }
        Line {
            text: qsTr("Usual: %1").arg(sheet.keep.usual)
            bold: true
        }
        Line {
            text: sheet.keep.source
            color: Theme.pencil
        }
        FaceField {
            id: years
            objectName: "keepYears"
            width: parent.width
            label: qsTr("Years here, from the last day it is about")
            placeholder: qsTr("empty: as is usual")
            tail: qsTr("years")
            readOnly: !sheet.keep.mayKeep
            digitsOnly: true
            maximumLength: 3
            wrong: sheet.keep.wrongField === "years" ? sheet.keep.wrongWords : ""
        }
        Row {
            objectName: "keepFewer"
            visible: fewer.text !== ""
            width: parent.width
            spacing: 8

            StateShape {
                id: shape
                kind: ShapeKind.Must
                size: 20
            }
            Words {
                id: fewer
                width: parent.width - shape.width - 8
                text: sheet.opened ? sheet.keep.fewerWords(years.text) : ""
                color: Theme.oxide
            }
        }
        Line { text: qsTr("Check it against today's local rule: where it asks for longer, it wins.") }
        SlabButton {
            objectName: "keepYearsKeep"
            visible: sheet.keep.mayKeep
            pressable: visible
            width: parent.width
            height: implicitHeight
            text: qsTr("Keep it so here")
            onClicked: {
                if (years.text.trim() === "")
                    sheet.keep.keepAsUsual();
                else
                    sheet.keep.keep(years.text);
            }
        }
        PlainButton {
            objectName: "keepAsUsual"
            visible: sheet.keep.mayKeep && sheet.keep.years !== ""
            pressable: visible
            width: parent.width
            height: implicitHeight
            text: qsTr("As is usual")
            secondLine: sheet.keep.usual
            onClicked: sheet.keep.keepAsUsual()
        }
        Line {
            visible: !sheet.keep.mayKeep
            text: qsTr("A manager sets how long records are kept.")
            color: Theme.pencil
        }
    }
}
