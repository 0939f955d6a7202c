// KeepAndForget: how long each class of records is usually kept and is kept here, and who has left
// and may be forgotten by now. keep: the view model; wide: leavers beside the classes, own scrolling.
// Signals: whoAsked, forgetAsked(personId).
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property RetentionViewModel keep
    property bool wide: false
    property real undoRoom: 0
    readonly property real actsTop: height
    readonly property real ring: 6  // room for the outline of what has the focus
    readonly property real leftWidth: wide ? Math.round((width - 3 * Theme.gutter) * 0.52) : width - 2 * Theme.gutter
    implicitHeight: undoRoom + 300

    signal whoAsked
    signal forgetAsked(string personId)

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Keep and forget")

    Component.onCompleted: keep.wake()
    Component.onDestruction: keep.rest()

    component Heading: Words {
        width: parent ? parent.width : 0
        bold: true
        size: Theme.title
        Accessible.role: Accessible.Heading
    }

    Flickable {
        id: view
        objectName: "keepPage"
        x: Theme.gutter - page.ring
        width: page.leftWidth + 2 * page.ring
        height: page.height - page.undoRoom
        contentWidth: width
        contentHeight: classes.height + (page.wide ? 0 : gone.height)
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: classes
            x: page.ring
            width: page.leftWidth
            topPadding: Theme.gap
            bottomPadding: Theme.gap
            spacing: Theme.gap

            Heading { text: qsTr("How long records are kept") }
            Words {
                objectName: "keepCheck"
                width: parent.width
                text: qsTr("Usual times are the least that federal rules of the United States ask for. A local rule, a contract or a lawsuit that asks for longer wins: set it here. Nothing is deleted by itself.")
            }
            Repeater {
                model: page.keep.classes

                RetentionCard {
                    required property int index

                    objectName: "retention" + index
                    width: classes.width
                    onClicked: sheet.show(key)
                }
            }
        }
    }
    Flickable {
        id: beside
        objectName: "keepLeavers"
        x: page.leftWidth + 2 * Theme.gutter - page.ring
        width: page.width - x - Theme.gutter + page.ring
        height: view.height
        visible: page.wide
        contentWidth: width
        contentHeight: gone.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds
    }
    Column {
        id: gone
        parent: page.wide ? beside.contentItem : view.contentItem
        x: page.ring
        y: page.wide ? 0 : classes.height
        width: parent ? parent.width - 2 * page.ring : 0
        topPadding: Theme.gap
        bottomPadding: Theme.gap
        spacing: Theme.gap

        Heading { text: qsTr("Who has left") }
        PaperCard {
            objectName: "keepEmpty"
            width: parent.width
            visible: !page.keep.loaded || page.keep.leaverCount === 0
            dashed: true

            Column {
                width: parent.width
                spacing: Theme.gap

                Hatch {
                    width: parent.width
                    height: 44
                    radius: Theme.corner
                }
                Words {
                    width: parent.width
                    text: page.keep.trouble !== "" ? page.keep.trouble
                        : !page.keep.loaded ? qsTr("The cars are being read.")
                                            : qsTr("Nobody has left. Who leaves then stands here, with the day until which the records are usually kept.")
                }
            }
        }
        Repeater {
            model: page.keep.leavers

            LeaverCard {
                required property int index

                objectName: "leaver" + index
                width: gone.width
                mayKeep: page.keep.mayKeep
                onForgetAsked: page.forgetAsked(key)
                onWhoAsked: page.whoAsked()
            }
        }
    }
    RetentionSheet {
        id: sheet
        objectName: "retentionSheet"
        anchors.fill: parent
        keep: page.keep
        side: page.wide
    }
}
