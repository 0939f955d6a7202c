// ShiftRows: one shift: its samples, the results against each limit with one word, and what the
// respirator that was worn may be worn up to. Every number opens. Signals: sumAsked, takeBackAsked(key).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: rows

    required property ExposureViewModel exposure

    signal sumAsked
    signal takeBackAsked(string key)

    spacing: Theme.gap

    component Heading: Words {
        width: parent ? parent.width : 0
        topPadding: 8
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }

    Words {
        objectName: "shiftTitle"
        width: parent.width
        text: rows.exposure.shiftTitle
        bold: true
        size: Theme.title
        Accessible.role: Accessible.Heading
    }
    Words {
        width: parent.width
        visible: rows.exposure.working
        text: qsTr("The sums are being made.")
        color: Theme.pencil
    }
    WrongLine {
        objectName: "shiftRefused"
        width: parent.width
        text: rows.exposure.refusedWords
    }
    Heading {
        visible: rows.exposure.resultCount > 0
        text: qsTr("Against the limits that hold here")
    }
    Repeater {
        model: rows.exposure.results

        FigureBlock {
            required property int index
            required property string key
            required property string title
            required property string from
            required property bool over
            required value
            required unit
            required limitWords

            objectName: "result" + index
            width: rows.width
            label: qsTr("%1, %2").arg(title).arg(from)
            out: over
            onClicked: {
                rows.exposure.openResult(key);
                rows.sumAsked();
            }
        }
    }
    StandingCard {
        width: parent.width
        visible: rows.exposure.mixtureWords !== ""
        title: rows.exposure.mixtureWords
        shape: rows.exposure.mixtureOver ? ShapeKind.Must : ShapeKind.None
        alarm: rows.exposure.mixtureOver
    }
    Words {
        width: parent.width
        visible: text !== ""
        text: rows.exposure.sampledWords
        size: Theme.note
        color: Theme.pencil
    }
    Words {
        width: parent.width
        visible: text !== ""
        text: rows.exposure.leftOutWords
        bold: true
    }
    Heading {
        visible: rows.exposure.wornCount > 0
        text: qsTr("Maximum use concentration of what was worn")
    }
    Repeater {
        model: rows.exposure.worn

        FigureBlock {
            required property int index
            required property string key
            required property string title
            required property string from
            required property string word
            required property bool over
            required property bool opens
            required property string why
            required value

            objectName: "worn" + index
            width: rows.width
            label: qsTr("%1 · %2").arg(title).arg(from)
            note: word === "" ? why : qsTr("%1 · %2").arg(word).arg(why)
            grade: opens ? FigureBlock.Plain : FigureBlock.Missing
            out: over
            pressable: opens
            onClicked: {
                if (rows.exposure.openWorn(key))
                    rows.sumAsked();
            }
        }
    }
    Heading {
        text: qsTr("Samples. Tap one to take it back.")
    }
    Repeater {
        model: rows.exposure.samples

        StandingCard {
            required property int index
            required property string key
            required property string when
            required property string worn
            required property string spoken
            required title

            objectName: "sample" + index
            width: rows.width
            pressable: rows.exposure.mayKeep
            name: spoken
            stateWords: when
            note: worn
            onClicked: rows.takeBackAsked(key)
        }
    }
    Words {
        width: parent.width
        text: qsTr("Check each limit against today's local rule. A number here replaces no industrial hygienist.")
        size: Theme.note
        color: Theme.pencil
    }
}
