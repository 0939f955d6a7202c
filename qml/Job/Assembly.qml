// Assembly: the steps of putting a car together in the order of the shop's rules, who did them, and
// what is not before what. assembly, rules: view models; wide: the acts in a pane right.
// Signals: cureAsked, fitAsked, whoAsked. Key: Enter the main act.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property AssemblyViewModel assembly
    required property RulesViewModel rules
    required property Session session
    property bool wide: false
    property real undoRoom: 0  // kept free above the acts
    readonly property real actsTop: acts.y
    readonly property real actsX: acts.x
    readonly property real actsWidth: acts.width
    readonly property real paneWidth: wide ? 376 : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth
    implicitHeight: acts.height + undoRoom + 200

    property bool measures: false  // there is a way to measuring gaps

    signal cureAsked
    signal fitAsked
    signal whoAsked

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Assembly")
    Keys.onPressed: event => {
        event.accepted = event.key === Qt.Key_Return || event.key === Qt.Key_Enter;
        if (event.accepted)
            main.press();
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
            topPadding: Theme.gap
            bottomPadding: Theme.gap
            spacing: Theme.gap

            Item {
                id: above
                visible: !page.wide
                width: parent.width
                height: visible ? facts.height : 0
            }
            EmptyCard {
                width: parent.width
                visible: page.assembly.count <= 1
                words: qsTr("Steps come with the work that is planned: loose panels, glass, assembly.")
            }
            Repeater {
                model: page.assembly.steps

                Column {
                    id: line

                    required property string key
                    required property string heading
                    required property string title
                    required property string words
                    required property string broken
                    required property int shape
                    required property bool dashed
                    required property bool isNext

                    width: body.width
                    spacing: Theme.gap

                    Words {
                        width: parent.width
                        visible: text !== ""
                        topPadding: 8
                        text: line.heading
                        bold: true
                        color: Theme.pencil
                        Accessible.role: Accessible.Heading
                    }
                    StepCard {
                        width: parent.width
                        key: line.key
                        title: line.title
                        words: line.words
                        broken: line.broken
                        shape: line.shape
                        dashed: line.dashed
                        isNext: line.isNext
                        onClicked: sheet.show(line.key)
                    }
                }
            }
            Item {
                id: end
                visible: !page.wide
                width: parent.width
                height: visible ? byRule.height : 0
            }
        }
    }
    Flickable {
        visible: page.wide
        x: page.paneX
        width: page.paneWidth
        height: acts.y - Theme.gap - page.undoRoom
        contentHeight: beside.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Item {
            id: beside
            width: parent.width
            height: facts.height + Theme.gap
        }
    }
    Column {
        id: facts
        parent: page.wide ? beside : above
        width: parent.width
        topPadding: page.wide ? Theme.gap : 0
        spacing: Theme.gap

        Words {
            width: parent.width
            text: qsTr("Assembly")
            bold: true
            size: Theme.screen
            Accessible.role: Accessible.Heading
        }
        Words {
            objectName: "assemblyCount"
            width: parent.width
            text: page.assembly.countWords
            color: Theme.pencil
        }
        Repeater {
            model: page.assembly.cautions

            CautionLine {
                required property string modelData
                width: facts.width
                words: modelData
            }
        }
        Item {
            id: aside
            visible: page.wide
            width: parent.width
            height: visible ? byRule.height : 0
        }
    }
    PlainButton {
        id: byRule
        objectName: "assemblyRules"
        parent: page.wide ? aside : end
        width: parent.width
        height: implicitHeight
        iconName: "list"
        beside: true
        text: qsTr("What comes before what")
        onClicked: order.show()
    }
    Column {
        id: acts
        x: page.paneX
        width: page.paneWidth
        y: parent.height - height - Theme.gap

        SlabButton {
            id: main
            objectName: "assemblyMain"
            width: parent.width
            height: visible ? implicitHeight : 0
            visible: page.assembly.mainText !== ""
            pressable: visible
            text: page.assembly.mainText
            secondLine: page.session.hasPerson ? page.assembly.mainSecond : qsTr("say who you are first")
            waits: page.assembly.mainWaits || !page.session.hasPerson
            onRefused: {
                if (page.session.hasPerson)
                    sheet.showOpen();
                else
                    page.whoAsked();
            }
            onClicked: page.assembly.act()
        }
    }
    StepSheet {
        id: sheet
        anchors.fill: parent
        assembly: page.assembly
        measures: page.measures
        onCureAsked: page.cureAsked()
        onFitAsked: page.fitAsked()
        function showOpen() {
            page.assembly.act();  // opens what it waits for
            opened = page.assembly.step !== "";
        }
    }
    RulesSheet {
        id: order
        anchors.fill: parent
        rules: page.rules
    }
}
