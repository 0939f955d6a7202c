// Spraying: the gun is up in a booth. Who holds it has one act, as wide as the screen and high enough
// for a knuckle: gun down. On everybody else's screen it only says to stay out; that a gun was put
// down by another is said in two acts. clearance: the view model. Signal: whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property ClearanceViewModel clearance
    property bool wide: false
    property real undoRoom: 0
    readonly property real actsTop: main.visible ? main.y : height
    readonly property real actsX: main.x
    readonly property real actsWidth: main.width
    property string asked: ""  // the spray that another one is to end
    property string askedName: ""

    implicitHeight: main.height + 300

    signal whoAsked

    Cautions {
        id: cautions
    }
    Flickable {
        id: view
        width: parent.width
        height: (main.visible ? main.y - Theme.gap : parent.height) - page.undoRoom
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

            Item {
                width: parent.width
                height: Math.max(must.height, head.height)

                StateShape {
                    id: must
                    kind: ShapeKind.Must
                    size: 40
                    ground: Theme.paper
                    anchors.verticalCenter: parent.verticalCenter
                }
                Words {
                    id: head
                    objectName: "sprayingHead"
                    x: 52
                    width: parent.width - x
                    anchors.verticalCenter: parent.verticalCenter
                    text: page.clearance.mine ? cautions.leaveOutside : cautions.spraying
                    bold: true
                    size: Theme.place
                    Accessible.role: Accessible.Heading
                }
            }
            Words {
                width: parent.width
                text: cautions.deviceOutside
                size: Theme.lead
            }
            Repeater {
                model: page.clearance.sprayers

                PaperCard {
                    id: one

                    required property string key
                    required property string words
                    required property string person
                    required property string digits
                    required property bool mine

                    width: body.width
                    name: qsTr("%1 sprays").arg(words)

                    Column {
                        width: parent.width
                        spacing: 4

                        Words {
                            width: parent.width
                            text: one.words
                            mute: true
                            bold: true
                            size: Theme.title
                        }
                        TimeText {
                            objectName: "sprayingTime"
                            text: one.digits
                            mute: true
                            bold: true
                            size: Math.min(Theme.far, Math.floor(parent.width / (one.digits.length > 5 ? 3.9 : 2.9)))
                            anchors.horizontalCenter: parent.horizontalCenter
                        }
                        PlainButton {
                            objectName: "gunDownOther"
                            width: parent.width
                            height: implicitHeight
                            visible: !one.mine
                            pressable: visible
                            text: qsTr("%1 put the gun down").arg(one.person)
                            onClicked: {
                                if (!page.clearance.mayAct)
                                    return page.whoAsked();
                                page.asked = one.key;
                                page.askedName = one.person;
                                other.opened = true;
                            }
                        }
                    }
                }
            }
            Words {
                width: parent.width
                text: cautions.airStaysOn
            }
        }
    }
    SlabButton {
        id: main
        objectName: "gunDown"
        x: Theme.gutter
        y: parent.height - height - Theme.gap
        width: parent.width - 2 * Theme.gutter
        height: Math.max(132, implicitHeight)
        visible: page.clearance.mine
        pressable: visible
        text: qsTr("Gun down")
        secondLine: qsTr("the time to clear begins with this tap")
        onClicked: page.clearance.gunDown()
    }
    Sheet {
        id: other
        anchors.fill: parent
        title: qsTr("Gun down for another")

        Column {
            width: parent.width
            spacing: Theme.gutter
            bottomPadding: Theme.gap

            Words {
                width: parent.width
                text: cautions.gunDownForAnother.arg(page.askedName)
                size: Theme.lead
            }
            SlabButton {
                objectName: "gunDownSure"
                width: parent.width
                height: implicitHeight
                text: qsTr("%1 is outside, gun down").arg(page.askedName)
                onClicked: {
                    page.clearance.gunDownOf(page.asked);
                    other.close();
                }
            }
        }
    }
}
