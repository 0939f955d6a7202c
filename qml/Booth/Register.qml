// Register: the protection register: everybody with what presses most, breathing air, respirators.
// protection: the view model; wide: the person who is open stands in a pane on the right. Signals:
// personAsked (narrow: his own page), whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens
import Jambline.Job

FocusScope {
    id: page

    required property RegisterViewModel protection
    property bool wide: false
    property real undoRoom: 0
    readonly property bool beside: wide && protection.person !== ""
    readonly property real paneWidth: width < 1200 ? 408 : 532
    readonly property real listWidth: beside ? width - paneWidth - 1 : width
    readonly property real actsTop: beside ? pane.actsTop : main.y
    readonly property real actsX: beside ? pane.x + pane.actsX : main.x
    readonly property real actsWidth: beside ? pane.actsWidth : main.width
    implicitHeight: beside ? pane.implicitHeight : main.height + undoRoom + 260

    signal personAsked
    signal whoAsked

    function open(person: string) {
        protection.openPerson(person);
        if (!beside)
            personAsked();
    }
    function act() {
        switch (protection.mainAct) {
        case RegisterViewModel.AddRespirator:
            one.show("");
            break;
        case RegisterViewModel.LogAir:
            air.show();
            break;
        case RegisterViewModel.OpenPerson:
            protection.openFirst();
            if (!beside)
                personAsked();
        }
    }

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Protection")

    component Heading: Words {
        width: parent ? parent.width : 0
        topPadding: 8
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }

    Flickable {
        id: view
        width: page.listWidth
        height: (main.visible ? main.y - Theme.gap - (page.beside ? 0 : page.undoRoom) : parent.height)
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

            PaperCard {
                width: parent.width
                visible: page.protection.personCount === 0
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
                        text: qsTr("Nobody is in the shop yet. People are added at the person tile of the floor.")
                        color: Theme.pencil
                    }
                }
            }
            Repeater {
                model: page.protection.people

                StandingCard {
                    required property int index
                    required property string key
                    required property string summary
                    required property string spoken
                    required property bool isOpen
                    required title
                    required shape

                    objectName: "registerPerson" + index
                    width: body.width
                    pressable: true
                    stateWords: summary
                    chosen: isOpen && page.beside
                    name: spoken
                    onClicked: page.open(key)
                }
            }
            Heading {
                text: qsTr("What feeds the airlines")
            }
            StandingCard {
                objectName: "registerAir"
                width: parent.width
                title: qsTr("Breathing air")
                stateWords: page.protection.airState
                words: page.protection.airWords
                note: page.protection.airNote
                shape: page.protection.airShape
                alarm: shape === ShapeKind.Must
                pressable: true
                name: qsTr("Breathing air, %1. Opens the record.").arg(stateWords)
                onClicked: page.protection.mayKeep ? air.show() : page.whoAsked()
            }
            Heading {
                text: qsTr("Respirators of the shop")
            }
            Words {
                width: parent.width
                visible: page.protection.respiratorCount === 0
                text: qsTr("None is entered. Before the gun asks for the one that is worn, so it wants to be here first.")
                color: Theme.pencil
            }
            Repeater {
                model: page.protection.respirators

                StandingCard {
                    required property int index
                    required property string key
                    required property string kindWords
                    required property string factorWords
                    required property bool retired
                    required title

                    objectName: "registerRespirator" + index
                    width: body.width
                    pressable: true
                    stateWords: retired ? qsTr("not used any more") : kindWords
                    words: qsTr("factor %1").arg(factorWords)
                    name: qsTr("%1, %2, %3. Opens it.").arg(title).arg(stateWords).arg(words)
                    onClicked: one.show(key)
                }
            }
            PlainButton {
                objectName: "addRespirator"
                width: parent.width
                height: implicitHeight
                visible: page.protection.manager && page.protection.respiratorCount > 0
                pressable: visible
                text: qsTr("Add a respirator")
                onClicked: one.show("")
            }
            Words {
                width: parent.width
                text: qsTr("Factors hold only within a working respirator program: chosen, fit tested, trained and cared for. The local rule and the product's safety data sheet win.")
                size: Theme.note
                color: Theme.pencil
            }
        }
    }
    SlabButton {
        id: main
        objectName: "registerMain"
        x: Theme.gutter
        y: parent.height - height - Theme.gap
        width: page.listWidth - 2 * Theme.gutter
        height: implicitHeight
        visible: !page.beside && page.protection.mainAct !== RegisterViewModel.None
        pressable: visible
        text: page.protection.mainText
        secondLine: page.protection.mainSecond
        waits: page.protection.mainWaits
        onRefused: page.whoAsked()
        onClicked: page.act()
    }
    Rectangle {
        visible: page.beside
        x: page.listWidth
        width: 1
        height: parent.height - 16
        color: Theme.chalk
    }
    Protection {
        id: pane
        visible: page.beside
        enabled: visible
        x: page.listWidth + 1
        width: page.paneWidth
        height: parent.height
        undoRoom: page.undoRoom
        protection: page.protection
        onWhoAsked: page.whoAsked()
    }
    AirSheet {
        id: air
        objectName: "airSheet"
        anchors.fill: parent
        protection: page.protection
    }
    RespiratorSheet {
        id: one
        objectName: "respiratorSheet"
        anchors.fill: parent
        form: page.protection.respirator
        onSumAsked: useSum.opened = true
    }
    SumSheet {
        id: useSum
        objectName: "useSum"
        z: 52
        anchors.fill: parent
        sum: page.protection.respirator.sum
    }
}
