// Hours: the day or the week of one person: spans or days, sums, waits beside, and the table for other
// programs. A span opens to its times. hours: the view model; wide: the spans stand in a pane right.
// Signal: whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property HoursViewModel hours
    property bool wide: false
    property real undoRoom: 0  // kept free above the acts
    readonly property real actsTop: acts.y
    readonly property real actsX: acts.x
    readonly property real actsWidth: acts.width
    readonly property real leftWidth: wide ? Math.round((width - 3 * Theme.gutter) * 0.46) : width - 2 * Theme.gutter

    implicitHeight: acts.height + undoRoom + 300
    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Hours")

    signal whoAsked

    Component.onCompleted: hours.wake()
    Component.onDestruction: hours.rest()

    Flickable {
        id: view
        width: page.leftWidth + 2 * Theme.gutter
        height: acts.y - Theme.gap - page.undoRoom
        contentHeight: body.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: body
            x: Theme.gutter
            width: page.leftWidth
            topPadding: Theme.gap
            bottomPadding: Theme.gap
            spacing: Theme.gap

            Flow {
                width: parent.width
                spacing: Theme.gap
                Accessible.role: Accessible.Grouping
                Accessible.name: qsTr("Whose hours")

                Repeater {
                    model: page.hours.people

                    PlainButton {
                        required property int index
                        required property string key
                        required property string title
                        required property bool isChosen

                        objectName: "hoursOf" + index
                        width: Math.min(body.width, Math.max(Theme.touch, implicitWidth))
                        height: implicitHeight
                        text: title
                        chosen: isChosen
                        onClicked: page.hours.choosePerson(key)
                    }
                }
            }
            ActRow {
                width: parent.width

                PlainButton {
                    objectName: "hoursDay"
                    text: qsTr("Day")
                    chosen: !page.hours.week
                    onClicked: page.hours.showWeek(false)
                }
                PlainButton {
                    objectName: "hoursWeek"
                    text: qsTr("Week")
                    chosen: page.hours.week
                    onClicked: page.hours.showWeek(true)
                }
            }
            Words {
                objectName: "hoursTitle"
                width: parent.width
                text: page.hours.title
                bold: true
                size: Theme.title
                Accessible.role: Accessible.Heading
            }
            PaperCard {
                objectName: "hoursTrouble"
                width: parent.width
                visible: page.hours.troubleWords !== ""
                must: true

                Words {
                    width: parent.width
                    text: page.hours.troubleWords
                    bold: true
                    color: Theme.oxide
                }
            }
            HoursSum {
                width: parent.width
                visible: page.hours.lineCount > 0
                hours: page.hours
            }
            Item {
                id: below
                width: parent.width
                height: rows.height
                visible: !page.wide
            }
            HoursLines {
                width: parent.width
                visible: page.hours.lineCount > 0
                hours: page.hours
            }
            PlainButton {
                objectName: "hoursTable"
                width: parent.width
                height: implicitHeight
                text: qsTr("Table for other programs")
                secondLine: qsTr("as a file, exact or rounded")
                onClicked: table.opened = true
            }
        }
    }
    Flickable {
        id: pane
        visible: page.wide
        x: view.width
        width: parent.width - x
        height: view.height
        contentHeight: beside.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Item {
            id: beside
            width: parent.width - Theme.gutter
            height: rows.height + 2 * Theme.gap
        }
    }
    Column {
        id: rows
        parent: page.wide ? beside : below
        y: page.wide ? Theme.gap : 0
        width: parent ? parent.width : 0
        spacing: Theme.gap

        PaperCard {
            objectName: "hoursEmpty"
            width: parent.width
            visible: page.hours.loaded && page.hours.lineCount === 0
            dashed: true

            Column {
                width: parent.width
                spacing: Theme.gap

                Hatch {
                    width: parent.width
                    height: 72
                    radius: Theme.corner
                }
                Words {
                    width: parent.width
                    text: !page.hours.anyPeople ? qsTr("Nobody is here yet. Everyone who clocks has a day here.")
                        : page.hours.week ? qsTr("%1 clocked nothing in this week. The clock below starts one.").arg(page.hours.who)
                                          : qsTr("%1 clocked nothing on this day. The clock below starts one.").arg(page.hours.who)
                }
                PlainButton {
                    objectName: "hoursToNow"
                    width: Math.min(parent.width, Math.max(200, implicitWidth))
                    height: implicitHeight
                    visible: !page.hours.isNow
                    pressable: visible
                    text: page.hours.week ? qsTr("This week") : qsTr("Today")
                    onClicked: page.hours.toNow()
                }
            }
        }
        Words {
            width: parent.width
            visible: !page.hours.week && page.hours.lineCount > 0
            topPadding: 6
            text: qsTr("Spans. Tap one to amend its times.")
            bold: true
            color: Theme.pencil
            Accessible.role: Accessible.Heading
        }
        Repeater {
            model: page.hours.spans

            SpanCard {
                required property int index
                required property string key
                required car
                required title
                required when
                required hours
                required said
                required note
                required shape
                required spoken

                objectName: "hoursSpan" + index
                width: rows.width
                onClicked: page.hours.openSpan(key)
            }
        }
        Repeater {
            model: page.hours.days

            PaperCard {
                id: day

                required property int index
                required property int key
                required property string title
                required property string hours
                required property string note
                required property bool isToday
                required property string spoken

                objectName: "hoursDay" + index
                width: rows.width
                pressable: true
                chosen: isToday
                name: spoken
                onClicked: page.hours.openDay(key)

                Item {
                    width: parent.width
                    height: Math.max(name.height, sum.height)

                    Column {
                        id: name
                        width: parent.width - sum.width - 12
                        anchors.verticalCenter: parent.verticalCenter

                        Words {
                            width: parent.width
                            text: day.title
                            mute: true
                            bold: true
                        }
                        Words {
                            width: parent.width
                            visible: text !== ""
                            text: day.note
                            mute: true
                            bold: true
                            size: Theme.note
                            color: Theme.ochreInk
                        }
                    }
                    TimeText {
                        id: sum
                        anchors.right: parent.right
                        anchors.verticalCenter: parent.verticalCenter
                        text: day.hours === "" ? "–" : day.hours
                        mute: true
                        bold: true
                    }
                }
            }
        }
    }
    ActRow {
        id: acts
        x: Theme.gutter
        y: parent.height - height - Theme.gap
        width: Math.min(parent.width - 2 * Theme.gutter, page.wide ? 560 : parent.width)
        height: implicitHeight

        PlainButton {
            objectName: "hoursBefore"
            text: page.hours.week ? qsTr("Week before") : qsTr("Day before")
            onClicked: page.hours.turn(-1)
        }
        PlainButton {
            objectName: "hoursNow"
            text: page.hours.week ? qsTr("This week") : qsTr("Today")
            chosen: page.hours.isNow
            onClicked: page.hours.toNow()
        }
        PlainButton {
            objectName: "hoursAfter"
            text: page.hours.week ? qsTr("Week after") : qsTr("Day after")
            dashed: page.hours.isNow
            onClicked: page.hours.turn(1)
        }
    }
    AmendSheet {
        objectName: "hoursAmend"
        anchors.fill: parent
        amend: page.hours.amend
        onWhoAsked: page.whoAsked()
    }
    HoursTableSheet {
        id: table
        objectName: "hoursTableSheet"
        anchors.fill: parent
        hours: page.hours
    }
}
