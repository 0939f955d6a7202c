// Booth: each booth of the shop on its tape with what was done to it and how long ago; a tap on one
// of the five opens the entry for it, a tap on the tape the booth itself. booth: the view model;
// wide: two booths beside each other. Without a booth: the form of one, and the act that adds it.
// Signal: whoAsked, somebody has to say who he is first.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property BoothViewModel booth
    property bool wide: false
    property real undoRoom: 0  // kept free above the main act
    readonly property real actsTop: main.y
    readonly property real actsX: main.x
    readonly property real actsWidth: main.width
    implicitHeight: main.height + undoRoom + 240

    signal whoAsked

    function toTop() {
        view.contentY = 0;
    }
    function openBooth(key: string) {
        booth.openBooth(key);
        one.show();
    }

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Booth")

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
            spacing: Theme.gutter

            Column {
                width: parent.width
                visible: booths.count === 0
                spacing: Theme.gap

                BoothCard {
                    width: Math.min(parent.width, 560)
                    empty: true
                    title: qsTr("No booth yet")
                    kindWords: ""
                    ages: []
                    filtersStillIn: false
                    booth: page.booth
                }
                Words {
                    width: Math.min(parent.width, 560)
                    text: qsTr("Nobody has named a booth. With one, filters, hoses and suits are logged in two taps, and dirt over time shows the cars before and after.")
                    color: Theme.pencil
                }
            }
            Grid {
                id: grid
                width: parent.width
                columns: page.wide ? 2 : 1
                columnSpacing: Theme.gutter
                rowSpacing: Theme.gutter

                Repeater {
                    id: booths
                    model: page.booth.booths

                    BoothCard {
                        required property string key

                        width: (grid.width - (grid.columns - 1) * grid.columnSpacing) / grid.columns
                        booth: page.booth
                        onOpened: page.openBooth(key)
                        onAsked: event => {
                            page.booth.startEvent(key, event);
                            log.opened = true;
                        }
                        onFiltersOut: page.booth.mayKeep ? page.booth.filtersOut(key) : page.whoAsked()
                    }
                }
            }
        }
    }
    SlabButton {
        id: main
        objectName: "addBooth"
        x: (parent.width - width) / 2
        y: parent.height - height - Theme.gap
        width: Math.min(parent.width - 2 * Theme.gutter, page.wide ? 420 : parent.width)
        height: implicitHeight
        visible: !page.booth.readOnly
        pressable: visible
        text: booths.count === 0 ? qsTr("Add a booth") : qsTr("Add another booth")
        secondLine: waits ? qsTr("say who you are first") : booths.count === 0 ? qsTr("its name, and how the air moves") : ""
        waits: !page.booth.mayKeep
        onRefused: page.whoAsked()
        onClicked: page.openBooth("")
    }
    BoothSheet {
        id: one
        anchors.fill: parent
        booth: page.booth
        onEventAsked: event => {
            page.booth.startCorrecting(event);
            log.opened = true;
        }
        onWhoAsked: page.whoAsked()
    }
    EventSheet {
        id: log
        z: 52
        anchors.fill: parent
        booth: page.booth
        onWhoAsked: page.whoAsked()
    }
}
