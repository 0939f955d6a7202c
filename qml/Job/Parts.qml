// Parts: the loose parts with their rack places, the car as a whole, and handing them on. parts: the
// view model; store: pictures; wide: the loose parts left, the car as a whole and the main act in a
// pane right. Signals: photoAsked (of what is sent back), whereAsked: where is a part of any car.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Item {
    id: page

    required property PartsViewModel parts
    property PictureStore store: null
    property bool wide: false
    property real undoRoom: 0  // kept free above the main act
    readonly property real actsTop: main.visible ? main.y : height
    readonly property real actsX: main.x
    readonly property real actsWidth: main.width
    readonly property real paneWidth: wide ? 376 : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth
    property string asked: ""

    signal photoAsked
    signal whereAsked

    // A picture was taken meanwhile: the reasons stand there again.
    Component.onCompleted: if (parts.returns) returning.opened = true

    function sayWho(key: string) {
        asked = key;
        who.opened = true;
    }

    Flickable {
        id: view
        width: page.wide ? page.paneX : parent.width
        height: page.wide ? parent.height : page.actsTop - Theme.gap - page.undoRoom
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

            Item {
                width: parent.width
                height: Math.max(heading.height, search.height)

                Words {
                    id: heading
                    width: parent.width - search.width - Theme.gap
                    anchors.verticalCenter: parent.verticalCenter
                    text: qsTr("Loose parts")
                    bold: true
                    size: Theme.title
                    Accessible.role: Accessible.Heading
                }
                PlainButton {
                    id: search
                    objectName: "partsWhere"
                    anchors.right: parent.right
                    width: Math.max(Theme.touch, implicitWidth)
                    height: implicitHeight
                    iconName: "search"
                    beside: true
                    text: qsTr("Where is it?")
                    name: qsTr("Where is a part of any car?")
                    onClicked: page.whereAsked()
                }
            }
            EmptyCard {
                width: parent.width
                visible: page.parts.partCount === 0
                words: qsTr("No panel of this car is painted loose. A clean panel on the car goes with the car.")
            }
            Grid {
                id: grid
                width: parent.width
                columns: page.wide && width > 560 * Theme.textScale ? 2 : 1
                columnSpacing: Theme.gap
                rowSpacing: Theme.gap

                Repeater {
                    model: page.parts.parts

                    PartCard {
                        required property string key
                        required property int state

                        width: (grid.width - (grid.columns - 1) * grid.columnSpacing) / grid.columns
                        partState: state
                        store: page.store
                        onOfferAsked: giving.show(key)
                        onTakeAsked: page.parts.take(key)
                        onBackAsked: returning.show(key)
                        onSettled: taker => page.parts.settle(key, taker)
                        onWhoAsked: page.sayWho(key)
                    }
                }
            }
            Item {
                id: below
                visible: !page.wide
                width: parent.width
                height: whole.height
            }
        }
    }
    Flickable {
        visible: page.wide
        x: page.paneX
        width: page.paneWidth
        height: page.actsTop - Theme.gap - page.undoRoom
        contentHeight: besides.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Item {
            id: besides
            width: parent.width
            height: whole.height + Theme.gap
        }
    }
    Column {
        id: whole
        parent: page.wide ? besides : below
        width: parent.width
        spacing: Theme.gap

        Words {
            width: parent.width
            topPadding: Theme.gap
            text: qsTr("The car")
            bold: true
            size: Theme.title
            Accessible.role: Accessible.Heading
        }
        PartCard {
            objectName: "wholeCar"
            width: parent.width
            title: qsTr("Whole car")
            verdict: ""
            place: page.parts.carPlace
            partState: page.parts.carState
            stateWords: page.parts.carState === PartsViewModel.Offered ? qsTr("offered")
                : page.parts.carState === PartsViewModel.Taken ? qsTr("taken")
                : page.parts.carState === PartsViewModel.Returned ? qsTr("sent back")
                : page.parts.carState === PartsViewModel.Disputed ? qsTr("disputed")
                : page.parts.carState === PartsViewModel.Ready ? qsTr("clean") : qsTr("waits")
            canOffer: page.parts.carCanOffer
            canTake: page.parts.carCanTake
            takers: page.parts.carTakers
            canSay: page.parts.carCanSay
            file: page.parts.carFile
            store: page.store
            onOfferAsked: giving.show("")
            onTakeAsked: page.parts.take("")
            onBackAsked: returning.show("")
            onSettled: taker => page.parts.settle("", taker)
            onWhoAsked: page.sayWho("")
        }
    }
    SlabButton {
        id: main
        objectName: "partsMain"
        x: page.paneX
        width: page.paneWidth
        height: implicitHeight
        y: parent.height - height - Theme.gap
        visible: page.parts.mainAct !== PartsViewModel.None
        pressable: visible
        text: page.parts.mainText
        secondLine: page.parts.mainSecond
        onClicked: page.parts.act()
    }
    HandOnSheet {
        id: giving
        anchors.fill: parent
        parts: page.parts
    }
    SendBackSheet {
        id: returning
        anchors.fill: parent
        parts: page.parts
        store: page.store
        onPhotoAsked: page.photoAsked()
    }
    RowChoice {
        id: who
        anchors.fill: parent
        title: qsTr("Who has it?")
        rows: page.parts.people
        onChose: key => page.parts.hasIt(page.asked, key)
    }
}
