// CarHours: the car on the tape: estimated against clocked, in all and by operation; each opens to its
// spans, and a span to its times. hours: the view model; wide: the spans stand in a pane right.
// Signal: whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property CarHoursViewModel hours
    property bool wide: false
    property real undoRoom: 0  // kept free at the foot
    readonly property real actsTop: height
    readonly property real leftWidth: wide ? Math.round((width - 3 * Theme.gutter) * 0.5) : width - 2 * Theme.gutter

    implicitHeight: undoRoom + 300
    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Hours of this car")

    signal whoAsked

    component SpanRows: Column {
        id: rows

        property bool shown: false

        width: parent ? parent.width : 0
        visible: shown
        spacing: Theme.gap

        Words {
            width: parent.width
            visible: page.hours.spanCount === 0
            text: qsTr("Nobody clocked on it yet.")
            color: Theme.pencil
        }
        Repeater {
            model: rows.shown ? page.hours.spans : null

            SpanCard {
                required property int index
                required property string key
                required title
                required when
                required hours
                required said
                required note
                required shape
                required spoken

                objectName: "carSpan" + index
                width: rows.width
                onClicked: page.hours.openSpan(key)
            }
        }
    }

    Flickable {
        id: view
        width: page.leftWidth + 2 * Theme.gutter
        height: page.height - page.undoRoom
        contentHeight: body.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: body
            x: Theme.gutter
            width: page.leftWidth
            topPadding: Theme.gap
            bottomPadding: Theme.gutter
            spacing: Theme.gap

            FigureBlock {
                objectName: "carHoursTotal"
                width: parent.width
                visible: page.hours.operationCount > 0
                pressable: false
                label: qsTr("Clocked on this car, all people")
                value: page.hours.total
                limitWords: page.hours.totalOf
                out: page.hours.over
                note: page.hours.totalNote
            }
            PaperCard {
                width: parent.width
                visible: page.hours.operationCount === 0
                dashed: true

                Column {
                    width: parent.width
                    spacing: Theme.gap

                    Hatch {
                        width: parent.width
                        height: 56
                        radius: Theme.corner
                    }
                    Words {
                        width: parent.width
                        text: qsTr("No operation is planned on this car, so there is nothing to clock.")
                    }
                }
            }
            Repeater {
                model: page.hours.operations

                Column {
                    id: operation

                    required property int index
                    required property string key
                    required property string title
                    required property string hours
                    required property string ofWords
                    required property string note
                    required property bool isOver
                    required property bool isOpen

                    width: body.width
                    spacing: Theme.gap

                    FigureBlock {
                        objectName: "carHours" + operation.index
                        width: parent.width
                        label: operation.title
                        value: operation.hours
                        limitWords: operation.ofWords
                        out: operation.isOver
                        note: operation.note
                        chosen: operation.isOpen
                        onClicked: page.hours.open(operation.key)
                    }
                    SpanRows {
                        shown: operation.isOpen && !page.wide
                    }
                }
            }
        }
    }
    Flickable {
        visible: page.wide
        x: view.width
        width: parent.width - x
        height: view.height
        contentHeight: beside.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: beside
            width: parent.width - Theme.gutter
            topPadding: Theme.gap
            bottomPadding: Theme.gap
            spacing: Theme.gap

            Words {
                width: parent.width
                visible: text !== ""
                text: page.hours.openTitle
                bold: true
                size: Theme.lead
                Accessible.role: Accessible.Heading
            }
            Words {
                width: parent.width
                visible: page.hours.openTitle === "" && page.hours.operationCount > 0
                text: qsTr("Tap an operation to see who was on it and when.")
                color: Theme.pencil
            }
            SpanRows {
                shown: page.wide && page.hours.openTitle !== ""
            }
        }
    }
    AmendSheet {
        objectName: "carHoursAmend"
        anchors.fill: parent
        amend: page.hours.amend
        onWhoAsked: page.whoAsked()
    }
}
