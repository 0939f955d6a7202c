// Comeback: a delivered car is in the shop again. comeback: the view model; wide: the complaint left,
// panel and who pays in a pane right. Signal: whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Item {
    id: page

    required property ComebackViewModel comeback
    property bool wide: false
    property real undoRoom: 0  // kept free above the main act
    readonly property real actsTop: acts.y
    readonly property real actsX: acts.x
    readonly property real actsWidth: acts.width
    readonly property real paneWidth: wide ? Math.min(420, width / 2) : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth

    signal whoAsked

    implicitHeight: acts.height + undoRoom + 220
    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("It came back")

    Flickable {
        id: view
        width: page.wide ? page.paneX : parent.width
        height: page.wide ? parent.height : acts.y - Theme.gap - page.undoRoom
        contentHeight: body.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: body
            x: Theme.gutter
            width: view.width - 2 * Theme.gutter
            topPadding: 4
            bottomPadding: Theme.gap
            spacing: Theme.gap

            Words {
                width: parent.width
                text: qsTr("It came back")
                bold: true
                size: Theme.screen
                Accessible.role: Accessible.Heading
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: page.comeback.deliveredWords
                color: Theme.pencil
            }
            WordChips {
                width: parent.width
                title: qsTr("What the customer says")
                words: page.comeback.complaints
                chosen: page.comeback.complaint
                key: "complaint"
                onPicked: row => page.comeback.sayComplaint(row)
            }
            FaceField {
                objectName: "comebackMore"
                width: parent.width
                label: qsTr("In more words")
                placeholder: qsTr("when, where")
                maximumLength: 120
                text: page.comeback.more
                onEdited: words => page.comeback.more = words
            }
            Item {
                id: below
                visible: !page.wide
                width: parent.width
                height: rest.height
            }
        }
    }
    Flickable {
        visible: page.wide
        x: page.paneX
        width: page.paneWidth
        height: acts.y - Theme.gap - page.undoRoom
        contentHeight: besides.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Item {
            id: besides
            width: parent.width
            height: rest.height + Theme.gap
        }
    }
    Column {
        id: rest
        parent: page.wide ? besides : below
        width: parent.width
        topPadding: 4
        spacing: Theme.gap

        Words {
            width: parent.width
            visible: panels.count > 0
            text: qsTr("On which panel")
            bold: true
            size: Theme.note
            color: Theme.pencil
            Accessible.role: Accessible.Heading
        }
        Flow {
            width: parent.width
            spacing: Theme.gap

            Repeater {
                id: panels
                model: page.comeback.panels

                PlainButton {
                    required property int index
                    required property string key
                    required property string title
                    required chosen

                    objectName: "comebackPanel" + index
                    width: Math.min(rest.width, Math.max(112, implicitWidth))
                    height: implicitHeight
                    text: title
                    onClicked: page.comeback.sayPanel(key)
                }
            }
        }
        WordChips {
            width: parent.width
            title: qsTr("Who pays")
            words: page.comeback.payers
            chosen: page.comeback.payer
            key: "payer"
            onPicked: row => page.comeback.sayPayer(row)
        }
    }
    Column {
        id: acts
        x: page.paneX
        width: page.paneWidth
        y: parent.height - height - Theme.gap

        SlabButton {
            objectName: "comebackMain"
            width: parent.width
            height: implicitHeight
            visible: page.comeback.possible
            pressable: visible
            text: qsTr("Take it back in")
            secondLine: page.comeback.mainSecond
            waits: page.comeback.mainWaits
            onRefused: page.whoAsked()
            onClicked: page.comeback.keep()
        }
    }
}
