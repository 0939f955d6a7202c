// FitBars: the gaps along one edge as bars on the wanted band: before, predicted, measured, and their
// numbers below in the same order. fit: the view model.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    required property FitViewModel fit
    property real chartHeight: 88
    readonly property real labels: Math.min(width * 0.34, Math.max(first.wide, second.wide, third.wide, ends.natural) + 8)
    readonly property real column: (width - 2 * padding - labels) / Math.max(1, fit.barCount)
    readonly property int shown: (fit.beforeTitle !== "" ? 1 : 0) + (fit.predictedTitle !== "" ? 1 : 0) + (fit.measuredTitle !== "" ? 1 : 0)
    readonly property real bar: Math.min(24, (column - 8) / Math.max(1, shown))

    component Bar: Rectangle {
        property real mm: -1
        property real most: 1
        property real room: 100

        visible: mm >= 0
        height: visible ? Math.max(2, room * mm / most) : 0
        anchors.bottom: parent ? parent.bottom : undefined
        border.width: 2
    }

    objectName: "fitBars"
    padding: 10

    Column {
        width: parent.width
        spacing: 4

        Item {
            id: chart
            width: parent.width
            height: card.chartHeight

            Repeater {
                model: card.fit.bars

                Item {
                    id: place

                    required property var model
                    required property int index
                    readonly property real scale_px: height / card.fit.barsTop

                    x: card.labels + index * card.column
                    width: card.column
                    height: chart.height

                    Rectangle {
                        y: place.height - place.model.high * place.scale_px
                        width: parent.width
                        height: (place.model.high - place.model.low) * place.scale_px
                        color: Theme.green
                        opacity: 0.16
                    }
                    Repeater {
                        model: [place.model.high, place.model.low]

                        DashFrame {
                            required property real modelData

                            y: place.height - modelData * place.scale_px - 1
                            width: place.width
                            height: 2
                            color: Theme.edge
                        }
                    }
                    Row {
                        anchors.bottom: parent.bottom
                        anchors.horizontalCenter: parent.horizontalCenter
                        height: parent.height
                        spacing: 2

                        Bar {
                            width: card.bar
                            room: place.height
                            most: card.fit.barsTop
                            mm: place.model.before
                            color: Theme.sheet
                            border.color: place.model.off && card.fit.measuredTitle === "" ? Theme.oxide : Theme.ink
                        }
                        Bar {
                            width: card.bar
                            room: place.height
                            most: card.fit.barsTop
                            mm: place.model.predicted
                            color: Theme.steel
                            border.color: Theme.edge
                        }
                        Bar {
                            width: card.bar
                            room: place.height
                            most: card.fit.barsTop
                            mm: place.model.measured
                            color: place.model.off ? Theme.oxide : Theme.ink
                            border.color: color
                        }
                    }
                }
            }
            Rectangle {
                x: card.labels
                y: parent.height - 1
                width: parent.width - x
                height: 2
                color: Theme.ink
            }
            Words {
                width: card.labels - 6
                y: Math.max(0, (parent.height - height) / 2)
                text: card.fit.barsWanted
                size: Theme.note
                color: Theme.pencil
            }
        }
        Item {
            width: parent.width
            height: Math.max(20, ends.height)

            Repeater {
                model: card.fit.bars

                Words {
                    required property var model
                    required property int index

                    x: card.labels + index * card.column
                    width: card.column
                    horizontalAlignment: Text.AlignHCenter
                    text: model.number
                    size: Theme.note
                    color: Theme.pencil
                    Accessible.name: qsTr("point %1").arg(model.number)
                }
            }
            Words {
                id: ends
                width: card.labels - 4
                text: qsTr("%1 to %2").arg(card.fit.edgeFrom).arg(card.fit.edgeTo)
                size: Theme.note
                color: Theme.pencil
            }
        }
        FitNumbers {
            id: first
            fit: card.fit
            labels: card.labels
            column: card.column
            title: card.fit.beforeTitle
            role: "beforeWords"
            fill: Theme.sheet
        }
        FitNumbers {
            id: second
            fit: card.fit
            labels: card.labels
            column: card.column
            title: card.fit.predictedTitle
            role: "predictedWords"
            fill: Theme.steel
        }
        FitNumbers {
            id: third
            fit: card.fit
            labels: card.labels
            column: card.column
            title: card.fit.measuredTitle
            role: "measuredWords"
            fill: Theme.ink
        }
    }
}
