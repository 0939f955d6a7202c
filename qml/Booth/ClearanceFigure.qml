// ClearanceFigure: stay out, the time that is left, when it is over and what it rests on, between two
// lines. digitsSize: pixels of the digits, less only where they would not fit. Signal: sumAsked.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Rectangle {
    id: figure

    required property ClearanceViewModel clearance
    property int digitsSize: Theme.far
    readonly property bool shown: clearance.digits !== ""
    // A digit of the face is 0.63 em wide, the colon 0.26.
    readonly property real ems: 0.64 * clearance.digits.length - (clearance.digits.includes(":") ? 0.36 : 0)
    readonly property bool dark: clearance.turned && !Theme.reducedMotion
    readonly property bool stands: clearance.state === ClearanceViewModel.NotCounting
    readonly property color line: clearance.shape === ShapeKind.Must || clearance.state === ClearanceViewModel.Counting
        ? Theme.oxide : Theme.edge

    signal sumAsked

    implicitHeight: body.height + 8
    height: implicitHeight
    color: Theme.sheet

    Rectangle {
        width: parent.width
        height: 4
        color: figure.line
    }
    Rectangle {
        width: parent.width
        height: 4
        anchors.bottom: parent.bottom
        color: figure.line
    }
    Column {
        id: body
        y: 4
        x: Theme.gutter
        width: parent.width - 2 * Theme.gutter
        topPadding: 10
        bottomPadding: 12
        spacing: 6

        Item {
            width: parent.width
            height: Math.max(mark.height, said.height)

            StateShape {
                id: mark
                anchors.verticalCenter: parent.verticalCenter
                kind: figure.clearance.state === ClearanceViewModel.Counting ? ShapeKind.Must : figure.clearance.shape
                size: 40
            }
            Column {
                id: said
                x: 52
                width: parent.width - x
                spacing: 2

                Words {
                    objectName: "clearanceHead"
                    width: parent.width
                    text: figure.clearance.headWords
                    bold: true
                    size: Theme.place
                    Accessible.role: Accessible.Heading
                }
                Words {
                    objectName: "clearanceWhy"
                    width: parent.width
                    visible: text !== ""
                    text: figure.clearance.whyWords
                    size: Theme.lead
                }
            }
        }
        Rectangle {
            width: parent.width
            height: visible ? digits.height - Math.round(0.1 * digits.size) : 0  // the face has air below
            visible: figure.shown
            color: figure.dark ? Theme.ink : Theme.sheet

            TimeText {
                id: digits
                objectName: "clearanceDigits"
                anchors.horizontalCenter: parent.horizontalCenter
                text: figure.clearance.digits
                bold: true
                size: Math.min(figure.digitsSize, Math.floor(parent.width / Math.max(1, figure.ems)))
                color: figure.dark ? Theme.paper : figure.stands ? Theme.pencil : Theme.ink
                Accessible.name: figure.clearance.spokenDigits
            }
        }
        Words {
            width: parent.width
            visible: text !== ""
            horizontalAlignment: Text.AlignHCenter
            text: figure.clearance.digitsUnit
            bold: true
            size: Theme.title
        }
        LimitLine {
            width: parent.width
            height: implicitHeight
            visible: figure.clearance.state === ClearanceViewModel.Counting
            name: figure.clearance.spokenDigits
            value: figure.clearance.gone
            filled: true
            marks: [0, 1]
            tone: Theme.ochre
            lowWords: figure.clearance.restartWords !== "" ? figure.clearance.restartWords : qsTr("gun down")
            highWords: qsTr("time is over")
        }
        Row {
            width: parent.width
            visible: figure.clearance.clearsAt !== ""
            spacing: 12

            Words {
                id: clears
                text: qsTr("Clears at")
                size: Theme.lead
                color: Theme.pencil
            }
            TimeText {
                objectName: "clearsAt"
                anchors.verticalCenter: clears.verticalCenter
                text: figure.clearance.clearsAt
                bold: true
                size: Theme.title
            }
        }
        PaperCard {
            objectName: "clearanceSum"
            width: parent.width
            visible: figure.clearance.hasSum
            pressable: visible
            name: qsTr("It rests on: %1. Opens the sum.").arg(figure.clearance.restsWords)
            onClicked: figure.sumAsked()

            Item {
                width: parent.width
                height: Math.max(rests.height, go.height)

                Words {
                    id: rests
                    objectName: "clearanceRests"
                    width: parent.width - go.width - 12
                    anchors.verticalCenter: parent.verticalCenter
                    text: figure.clearance.restsWords
                    mute: true
                }
                Icon {
                    id: go
                    anchors.right: parent.right
                    anchors.verticalCenter: parent.verticalCenter
                    source: "forward"
                }
            }
        }
        Words {
            width: parent.width
            visible: figure.clearance.state === ClearanceViewModel.Counting
            text: cautions.localRule
            size: Theme.note
            color: Theme.pencil
        }
    }
    Cautions {
        id: cautions
    }
}
