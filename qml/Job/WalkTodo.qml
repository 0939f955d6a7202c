// WalkTodo: what to do in this round, in words: grade, tool, towel, the film word of the panel, what
// comes after; then the marks, in the order of the round, to be found again. Signal: markAsked(key).
pragma ComponentBehavior: Bound
import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: todo

    required property WalkViewModel walk
    readonly property bool inRound: walk.mode === WalkViewModel.Round

    signal markAsked(string key)

    spacing: Theme.gap

    PaperCard {
        width: parent.width
        visible: todo.walk.mode === WalkViewModel.Nothing
        dashed: true

        Item {
            width: parent.width
            height: Math.max(why.height, 64)

            Hatch {
                width: 56
                height: 56
                anchors.verticalCenter: parent.verticalCenter
            }
            Words {
                id: why
                x: 70
                width: parent.width - x
                anchors.verticalCenter: parent.verticalCenter
                text: qsTr("No round is planned and no mark waits for its answer. The plan says why.")
                color: Theme.pencil
            }
        }
    }
    PaperCard {
        width: parent.width
        visible: todo.walk.mode !== WalkViewModel.Nothing
        side: todo.inRound
        footColor: Theme.blue
        padding: 14

        Column {
            width: parent.width
            spacing: 6

            Repeater {
                model: todo.walk.todo

                Words {
                    required property string modelData
                    required property int index

                    width: parent.width
                    text: modelData
                    bold: index === 0
                    size: index === 0 ? Theme.lead : Theme.body
                }
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: todo.walk.panelFacts
                color: Theme.pencil
            }
        }
    }
    Row {
        width: parent.width
        visible: todo.walk.filmWords !== ""
        spacing: 8

        StateShape {
            id: film
            kind: todo.walk.filmStops ? ShapeKind.Waits : ShapeKind.Done
            size: 22
            ground: Theme.paper
        }
        Words {
            width: parent.width - film.width - 8
            text: todo.walk.filmWords
        }
    }
    Row {
        width: parent.width
        visible: todo.walk.cleanDown !== ""
        spacing: 8

        StateShape {
            id: clean
            kind: ShapeKind.NotYet
            size: 22
            ground: Theme.paper
        }
        Words {
            width: parent.width - clean.width - 8
            text: todo.walk.cleanDown
        }
    }
    Words {
        width: parent.width
        visible: text !== ""
        text: todo.walk.then
        color: Theme.pencil
    }
    Repeater {
        model: todo.walk.marks

        PaperCard {
            id: line

            required property string key
            required property string title
            required property string place
            required property string spoken

            objectName: "walkMark"
            width: todo.width
            pressable: true
            padding: 8
            name: qsTr("%1. Gone, came back, or burn-through.").arg(spoken)
            onClicked: todo.markAsked(key)

            Item {
                width: parent.width
                height: Math.max(28, words.height)

                StateShape {
                    id: ring
                    x: 4
                    anchors.verticalCenter: parent.verticalCenter
                    kind: ShapeKind.Ring
                    size: 24
                    key: line.key
                }
                Column {
                    id: words
                    x: 42
                    width: parent.width - x
                    anchors.verticalCenter: parent.verticalCenter

                    Words {
                        width: parent.width
                        text: line.title
                        mute: true
                        bold: true
                        size: Theme.lead
                    }
                    Words {
                        width: parent.width
                        text: line.place
                        mute: true
                    }
                }
            }
        }
    }
}
