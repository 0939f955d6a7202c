// Limits: what samples are held against: each limit with its value, unit, authority, year and source.
// limits: the view model; wide: two beside each other. Signal: whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property LimitsViewModel limits
    property bool wide: false
    property real undoRoom: 0
    readonly property real actsTop: main.y
    readonly property real actsX: main.x
    readonly property real actsWidth: main.width
    implicitHeight: main.height + undoRoom + 260

    signal whoAsked

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Limits")

    Flickable {
        id: view
        width: parent.width
        height: main.y - Theme.gap - page.undoRoom
        contentHeight: body.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: body
            x: Theme.gutter
            width: view.width - 2 * Theme.gutter
            topPadding: Theme.gap
            bottomPadding: Theme.gap
            spacing: Theme.gap

            Words {
                width: parent.width
                text: page.limits.countWords
                bold: true
                size: Theme.title
                Accessible.role: Accessible.Heading
            }
            Words {
                objectName: "limitsCheck"
                width: parent.width
                text: qsTr("Limits change. Check each against today's local rule before you go by it.")
            }
            Grid {
                id: grid
                width: parent.width
                columns: page.wide ? 2 : 1
                columnSpacing: Theme.gap
                rowSpacing: Theme.gap

                Repeater {
                    model: page.limits.limits

                    PaperCard {
                        id: card

                        required property int index
                        required property string key
                        required property string substance
                        required property string kindWords
                        required property string value
                        required property string unit
                        required property string from
                        required property string source
                        required property bool own
                        required property bool retired
                        required property string spoken

                        objectName: "limit" + index
                        width: (grid.width - (grid.columns - 1) * grid.columnSpacing) / grid.columns
                        pressable: true
                        dashed: retired
                        name: qsTr("%1. Opens the limit.").arg(spoken)
                        onClicked: one.show(key)

                        Column {
                            width: parent.width
                            spacing: 2

                            Flow {
                                width: parent.width
                                spacing: 8

                                Words {
                                    width: Math.min(natural, parent.width)
                                    text: card.substance
                                    mute: true
                                    bold: true
                                }
                                Words {
                                    width: Math.min(natural, parent.width)
                                    text: card.kindWords
                                    mute: true
                                    color: Theme.pencil
                                }
                            }
                            Flow {
                                width: parent.width
                                spacing: 10

                                Words {
                                    id: figure
                                    width: Math.min(natural, parent.width)
                                    text: qsTr("%1 %2").arg(card.value).arg(card.unit)
                                    mute: true
                                    bold: !card.retired
                                    size: Theme.lead
                                }
                                Words {
                                    width: Math.min(natural, parent.width)
                                    height: Math.max(figure.height, implicitHeight)
                                    verticalAlignment: Text.AlignVCenter
                                    text: card.from
                                    mute: true
                                }
                            }
                            Words {
                                width: parent.width
                                text: card.own ? qsTr("%1 · the shop's own").arg(card.source) : card.source
                                mute: true
                                size: Theme.note
                                color: Theme.pencil
                            }
                            Row {
                                visible: card.retired
                                spacing: 8

                                Hatch {
                                    width: 24
                                    height: 24
                                }
                                Words {
                                    text: qsTr("does not hold here")
                                    mute: true
                                    bold: true
                                }
                            }
                        }
                    }
                }
            }
        }
    }
    SlabButton {
        id: main
        objectName: "addLimit"
        x: (parent.width - width) / 2
        y: parent.height - height - Theme.gap
        width: Math.min(parent.width - 2 * Theme.gutter, page.wide ? 420 : parent.width)
        height: implicitHeight
        text: qsTr("Add a limit")
        secondLine: waits ? qsTr("a manager enters it") : qsTr("with its authority, year and source")
        waits: !page.limits.mayKeep
        onRefused: page.whoAsked()
        onClicked: one.show("")
    }
    LimitSheet {
        id: one
        objectName: "limitSheet"
        anchors.fill: parent
        limits: page.limits
    }
}
