// ShotListRows: which pictures the shop wants: the stages, or the page of one with its shots; a
// manager takes one out, puts it back, and adds an own one. shots must be set.
pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Jambline.Theme
import Jambline.Screens

Column {
    id: rows

    required property ShotListViewModel shots
    property int view: -1
    property int often: -1

    spacing: Theme.gap

    component Heading: Words {
        width: parent ? parent.width : 0
        topPadding: 8
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }
    component ShotLine: PaperCard {
        id: line

        required property string title
        required property string stand
        required property string often
        required property int view
        property string actText: ""
        property string actName: ""

        signal acted

        padding: 8
        name: qsTr("%1, %2. %3").arg(title).arg(often).arg(stand)

        Item {
            width: parent.width
            height: Math.max(drawing.height, said.height, act.height)

            ShotItem {
                id: drawing
                width: 48
                height: 48
                view: line.view
                line: Theme.pencil
                eye: Theme.blue
                Accessible.ignored: true
            }
            Column {
                id: said
                x: drawing.width + 10
                width: parent.width - x - (act.visible ? act.width + 8 : 0)
                spacing: 2

                Words {
                    width: parent.width
                    text: line.title
                    mute: true
                    bold: true
                }
                Words {
                    width: parent.width
                    text: line.often
                    mute: true
                    size: Theme.note
                }
                Words {
                    width: parent.width
                    text: line.stand
                    mute: true
                    size: Theme.note
                    color: Theme.pencil
                }
            }
            PlainButton {
                id: act
                objectName: line.actName
                anchors.right: parent.right
                visible: rows.shots.manager
                pressable: visible
                text: line.actText
                name: qsTr("%1: %2").arg(line.actText).arg(line.title)
                onClicked: line.acted()
            }
        }
    }

    Connections {
        target: rows.shots
        function onAdded() {
            field.text = "";
            rows.view = -1;
            rows.often = -1;
        }
    }

    Repeater {
        model: rows.visible && rows.shots.stage === "" ? rows.shots.stages : null

        PlainButton {
            required property string key
            required property string title
            required property string words

            objectName: "shotListStage"
            width: rows.width
            height: implicitHeight
            text: title
            secondLine: words
            onClicked: rows.shots.open(key)
        }
    }
    PlainButton {
        objectName: "shotListBack"
        visible: rows.shots.stage !== ""
        pressable: visible
        width: parent.width
        height: visible ? implicitHeight : 0
        iconName: "back"
        beside: true
        text: qsTr("All stages")
        onClicked: rows.shots.open("")
    }
    Words {
        width: parent.width
        visible: rows.shots.stage !== "" && !rows.shots.manager
        text: qsTr("A manager changes these.")
        color: Theme.pencil
    }
    Repeater {
        model: rows.shots.shots

        ShotLine {
            id: wanted

            required property string key

            width: rows.width
            actName: "shotListOut"
            actText: qsTr("Take out")
            onActed: rows.shots.takeOut(key)
        }
    }
    Heading {
        visible: rows.shots.awayCount > 0
        text: qsTr("Taken out")
    }
    Repeater {
        model: rows.shots.away

        ShotLine {
            id: gone

            required property string key

            width: rows.width
            dashed: true
            actName: "shotListIn"
            actText: qsTr("Put back")
            onActed: rows.shots.putBack(key)
        }
    }
    Column {
        visible: rows.shots.stage !== "" && rows.shots.manager
        width: parent.width
        height: visible ? implicitHeight : 0
        spacing: Theme.gap

        Heading { text: qsTr("One of our own") }
        FaceField {
            id: field
            objectName: "shotListName"
            width: parent.width
            label: qsTr("What it shows")
            placeholder: qsTr("spare wheel well")
            maximumLength: 60
        }
        Words {
            width: parent.width
            text: rows.view < 0 ? qsTr("Where to stand") : rows.shots.views[rows.view]
            color: Theme.pencil
        }
        GridLayout {
            id: places
            width: parent.width
            columns: Math.max(3, Math.floor((width + Theme.gap) / (80 + Theme.gap)))
            columnSpacing: Theme.gap
            rowSpacing: Theme.gap

            Repeater {
                model: rows.shots.views

                PlainButton {
                    id: place

                    required property int index
                    required property string modelData

                    objectName: "shotListView" + index
                    Layout.preferredWidth: (places.width - (places.columns - 1) * places.columnSpacing) / places.columns
                    Layout.preferredHeight: 80
                    name: modelData
                    chosen: rows.view === index
                    onClicked: rows.view = index

                    ShotItem {
                        anchors.centerIn: parent
                        width: 60
                        height: 60
                        view: place.index
                        line: Theme.pencil
                        eye: Theme.blue
                        Accessible.ignored: true
                    }
                }
            }
        }
        Words {
            width: parent.width
            text: qsTr("How often")
            color: Theme.pencil
        }
        Flow {
            id: often
            width: parent.width
            spacing: Theme.gap

            Repeater {
                model: rows.shots.oftens

                PlainButton {
                    required property int index
                    required property string modelData

                    objectName: "shotListOften" + index
                    width: Math.min(often.width, Math.max(120, implicitWidth))
                    height: implicitHeight
                    text: modelData
                    chosen: rows.often === index
                    onClicked: rows.often = index
                }
            }
        }
        SlabButton {
            objectName: "shotListAdd"
            width: parent.width
            height: implicitHeight
            text: qsTr("Want this picture")
            secondLine: field.text.trim() === "" ? qsTr("needs a name")
                : rows.view < 0 ? qsTr("say where to stand") : rows.often < 0 ? qsTr("say how often") : ""
            waits: secondLine !== ""
            onClicked: rows.shots.add(field.text, rows.view, rows.often)
        }
    }
}
