// WalkAround: the last look at a car before it goes. walk: the view model; wide: what is open left,
// the rest and the delivery in a pane right. Signals: whoAsked, noteAsked, leadAsked(leads, where):
// to where a point is closed; cureAsked: to the time of its glass.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Item {
    id: page

    required property WalkAroundViewModel walk
    property bool wide: false
    property real undoRoom: 0  // kept free above the acts
    readonly property real actsTop: acts.y
    readonly property real actsX: acts.x
    readonly property real actsWidth: acts.width
    readonly property real paneWidth: wide ? Math.min(480, width / 2) : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth

    signal whoAsked
    signal noteAsked
    signal cureAsked
    signal leadAsked(int leads, string where)

    implicitHeight: acts.height + undoRoom + 220
    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Walk-around")

    Connections {
        target: page.walk
        function onSignatureKept() { signing.close(); }
    }

    component Title: Words {
        width: parent ? parent.width : 0
        topPadding: 4
        bold: true
        Accessible.role: Accessible.Heading
    }

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
                text: qsTr("Walk-around")
                bold: true
                size: Theme.screen
                Accessible.role: Accessible.Heading
            }
            Words {
                width: parent.width
                text: qsTr("Two people, a second light, once around from the left front.")
                size: Theme.note
                color: Theme.pencil
            }
            Words {
                objectName: "walkAroundPoints"
                width: parent.width
                visible: text !== ""
                text: page.walk.pointsWords
                bold: true
                size: Theme.title
                Accessible.role: Accessible.Heading
            }
            PaperCard {
                width: parent.width
                visible: page.walk.pointCount === 0 && page.walk.pointsWords !== ""
                dashed: true

                Words {
                    width: parent.width
                    text: qsTr("Every panel is clean, every stage is done, no part is on order.")
                    color: Theme.pencil
                }
            }
            Repeater {
                model: page.walk.points

                PointRow {
                    required property int index
                    required property int leads
                    required property string where
                    required words
                    required act
                    required shape

                    objectName: "point" + index
                    width: body.width
                    opens: leads !== WalkAroundViewModel.Nowhere && leads !== WalkAroundViewModel.Here
                    onClicked: page.leadAsked(leads, where)
                    onActed: page.walk.sayDone(where)
                }
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
        spacing: Theme.gap

        Title {
            visible: page.walk.ruleCount > 0
            text: qsTr("Before it is delivered")
        }
        Repeater {
            model: page.walk.rules

            FactCard {
                required property int index
                required property string words
                required property string why
                required property int shape
                required property string step
                required title
                required act

                objectName: "rule" + index
                width: rest.width
                facts: words
                more: why
                kind: shape
                onActed: page.walk.sayDone(step)
            }
        }
        WordChips {
            width: parent.width
            visible: page.walk.asksReason
            title: qsTr("Or delivered without it, because")
            words: page.walk.reasons
            chosen: page.walk.reason
            key: "reason"
            onPicked: row => page.walk.sayReason(row)
        }
        Title {
            visible: page.walk.stepCount > 0
            text: qsTr("Edges, last polish, wash")
        }
        Repeater {
            model: page.walk.steps

            FactCard {
                required property int index
                required property string key
                required property string words
                required property int shape
                required title
                required act

                objectName: "step" + index
                width: rest.width
                facts: words
                kind: shape
                onActed: page.walk.sayDone(key)
            }
        }
        Title { text: qsTr("Signature") }
        FactCard {
            objectName: "walkAroundSign"
            width: parent.width
            title: page.walk.signedWords !== "" ? page.walk.signedWords : qsTr("Not signed yet")
            facts: page.walk.asksSignature && page.walk.pointCount > 0
                ? qsTr("The customer signs for what is open.") : ""
            kind: page.walk.signedShape
            act: page.walk.asksSignature ? qsTr("The customer signs") : ""
            onActed: signing.show()
        }
    }
    Column {
        id: acts
        x: page.paneX
        width: page.paneWidth
        y: parent.height - height - Theme.gap
        spacing: Theme.gap

        PlainButton {
            objectName: "walkAroundNote"
            width: parent.width
            height: implicitHeight
            text: qsTr("Hand-over note")
            onClicked: page.noteAsked()
        }
        SlabButton {
            objectName: "walkAroundMain"
            width: parent.width
            height: implicitHeight
            visible: page.walk.mayDeliver
            pressable: visible
            text: page.walk.mainText
            secondLine: page.walk.mainSecond
            waits: page.walk.waitsFor !== WalkAroundViewModel.Nothing
            onRefused: {
                if (page.walk.waitsFor === WalkAroundViewModel.Person)
                    page.whoAsked();
                else if (page.walk.waitsFor === WalkAroundViewModel.Glass)
                    page.cureAsked();
                else if (page.walk.waitsFor === WalkAroundViewModel.Signature)
                    signing.show();
            }
            onClicked: page.walk.deliver()
        }
    }
    SignatureSheet {
        id: signing
        anchors.fill: parent
        statement: page.walk.statement
        onDone: (strokes, signer) => page.walk.sign(strokes, signer)
    }
}
