// Parts: the loose parts with their rack places, the car as a whole, and handing them on. parts: the
// view model; wide: the loose parts left, the car as a whole and the main act in a pane right.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Item {
    id: page

    required property PartsViewModel parts
    property bool wide: false
    property real undoRoom: 0  // kept free above the main act
    readonly property real actsTop: main.visible ? main.y : height
    readonly property real actsX: main.x
    readonly property real actsWidth: main.width
    readonly property real paneWidth: wide ? 376 : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth
    property string asked: ""

    function addRack() {
        parts.addRack(newRack.text);
        newRack.text = "";
    }

    function offer(key: string) {
        asked = key;
        giving.opened = true;
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

            Words {
                width: parent.width
                text: qsTr("Loose parts")
                bold: true
                size: Theme.title
                Accessible.role: Accessible.Heading
            }
            PaperCard {
                width: parent.width
                visible: page.parts.partCount === 0
                dashed: true

                Item {
                    width: parent.width
                    height: Math.max(empty.height, 64)

                    Hatch {
                        width: 56
                        height: 56
                        anchors.verticalCenter: parent.verticalCenter
                    }
                    Words {
                        id: empty
                        x: 70
                        width: parent.width - x
                        anchors.verticalCenter: parent.verticalCenter
                        text: qsTr("No panel of this car is painted loose. A clean panel on the car goes with the car.")
                        color: Theme.pencil
                    }
                }
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
                        onOfferAsked: page.offer(key)
                        onTakeAsked: page.parts.take(key)
                        onBackAsked: {
                            page.asked = key;
                            returning.opened = true;
                        }
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
            onOfferAsked: page.offer("")
            onTakeAsked: page.parts.take("")
            onBackAsked: {
                page.asked = "";
                returning.opened = true;
            }
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
        onClicked: {
            if (page.parts.mainAct === PartsViewModel.Take)
                page.parts.take(page.parts.mainKey);
            else
                page.offer(page.parts.mainKey);
        }
    }
    Sheet {
        id: giving
        anchors.fill: parent
        title: qsTr("Hand on")

        Column {
            id: choices
            width: parent.width
            spacing: Theme.gap

            Words {
                width: parent.width
                text: page.parts.titleOf(page.asked)
                bold: true
                size: Theme.lead
            }
            Words {
                width: parent.width
                visible: page.asked !== ""
                text: qsTr("Hang it at a rack place")
                color: Theme.pencil
            }
            Flow {
                width: parent.width
                visible: page.asked !== ""
                spacing: Theme.gap

                Repeater {
                    model: page.parts.racks

                    PlainButton {
                        required property string key
                        required property string title

                        width: Math.min(choices.width, Math.max(112, implicitWidth))
                        text: title
                        name: qsTr("Hang at %1").arg(title)
                        onClicked: {
                            page.parts.hang(page.asked, key);
                            giving.close();
                        }
                    }
                }
            }
            FaceField {
                id: newRack
                width: parent.width
                visible: page.asked !== ""
                label: qsTr("New rack place")
                placeholder: qsTr("rack 1")
                maximumLength: 40
                onAccepted: page.addRack()
            }
            PlainButton {
                width: parent.width
                visible: newRack.visible && newRack.text.trim() !== ""
                pressable: visible
                text: qsTr("Add this rack place")
                onClicked: page.addRack()
            }
            Words {
                width: parent.width
                text: page.asked === "" ? qsTr("Offer it to someone") : qsTr("Or offer it to someone")
                color: Theme.pencil
            }
            Flow {
                width: parent.width
                spacing: Theme.gap

                Repeater {
                    model: page.parts.roles

                    PlainButton {
                        required property string key
                        required property string title

                        width: Math.min(choices.width, Math.max(112, implicitWidth))
                        text: title
                        name: qsTr("Offer to the %1").arg(title.toLowerCase())
                        onClicked: {
                            page.parts.offerTo(page.asked, key);
                            giving.close();
                        }
                    }
                }
            }
        }
    }
    Sheet {
        id: returning
        anchors.fill: parent
        title: qsTr("Send back")

        Column {
            id: reasons
            width: parent.width
            spacing: Theme.gap

            Words {
                width: parent.width
                text: qsTr("%1: what is wrong with it?").arg(page.parts.titleOf(page.asked))
                size: Theme.lead
            }
            Flow {
                width: parent.width
                spacing: Theme.gap

                Repeater {
                    model: page.parts.reasons

                    PlainButton {
                        required property string modelData

                        width: Math.min(reasons.width, Math.max(112, implicitWidth))
                        text: modelData
                        onClicked: {
                            page.parts.sendBack(page.asked, modelData);
                            returning.close();
                        }
                    }
                }
            }
        }
    }
}
