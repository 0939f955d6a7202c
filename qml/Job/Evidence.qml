// Evidence: what threw the dirt of the car: the map with the chosen sign on it, the answer in one
// sentence, each sign as a line from chance to cause that opens to its numbers, what the particles
// look like, and the cause that a person sets or leaves open. evidence, inspect (for the map), booth:
// view models; wide: map left, the rest in a pane right. Signals: carAsked, whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property EvidenceViewModel evidence
    required property InspectViewModel inspect
    required property BoothViewModel booth
    property bool wide: false
    property real undoRoom: 0  // kept free above the main act
    readonly property real actsTop: main.visible ? main.y : height
    readonly property real actsX: paneX
    readonly property real actsWidth: paneWidth
    readonly property real paneWidth: wide ? (width >= 1200 ? 532 : 408) : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth
    readonly property real headEnd: Math.max(title.height, counts.y + counts.height)
    property bool others: false
    implicitHeight: headEnd + (wide ? 0 : 180) + undoRoom + main.height + 180

    signal carAsked
    signal whoAsked

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("What threw it")

    Component.onCompleted: {
        evidence.shown = true;
        frame();
    }
    Component.onDestruction: evidence.shown = false

    readonly property rect looked: evidence.mapBox

    onLookedChanged: frame()

    // What was looked at fills the map; the rest of the car does not stand beside it.
    function frame() {
        if (map.panel === "" && looked.width > 0 && map.height > 0)
            map.pattern.showPart(looked.x, looked.y, looked.width, looked.height);
    }

    Keys.onPressed: event => event.accepted = map.zoomKey(event)

    Connections {
        target: page.evidence
        function onBackAsked() {
            page.carAsked();
        }
    }

    Words {
        id: title
        x: Theme.gutter
        width: Math.min(natural, page.width - 2 * Theme.gutter)
        text: qsTr("What threw it")
        bold: true
        size: Theme.screen
        Accessible.role: Accessible.Heading
    }
    Words {
        id: counts

        readonly property bool below: title.natural + natural + 3 * Theme.gutter > page.width

        x: below ? Theme.gutter : page.width - Theme.gutter - width
        y: below ? title.height : title.height - height - 3
        width: Math.min(natural, page.width - 2 * Theme.gutter)
        text: page.evidence.countWords
        color: Theme.pencil
    }
    PatternMap {
        id: map
        objectName: "evidenceMap"
        x: 4
        y: page.headEnd + shows.height + 4
        width: (page.wide ? page.paneX - Theme.gutter : page.width) - 2 * x
        height: page.wide ? page.height - y - Theme.gap : Math.max(150, Math.min(280, page.height * 0.34 - shows.height))
        inspect: page.inspect
        panel: page.evidence.mapPanel
        inset: panel === "" ? 8 : 16
        onPanelChanged: Qt.callLater(page.frame) // qmllint disable
        onWidthChanged: Qt.callLater(page.frame) // qmllint disable
        onHeightChanged: Qt.callLater(page.frame) // qmllint disable
        Accessible.role: Accessible.Graphic
        Accessible.name: page.evidence.mapWords
        onTapped: (xMm, yMm, xPx, yPx) => page.evidence.showPanel(panel === "" ? map.pattern.pick(xPx, yPx) : "")

        SignItem {
            anchors.fill: parent
            evidence: page.evidence
            originX: map.pattern.originX
            originY: map.pattern.originY
            pxPerMm: map.pattern.pxPerMm
            mark: Theme.oxide
            quiet: Theme.pencil
            casing: Theme.sheet
            area: Theme.ochre
            line: Theme.ochreInk
        }
    }
    Words {
        id: shows
        x: Theme.gutter
        y: page.headEnd + 2
        width: map.width - 2 * Theme.gutter
        text: page.evidence.mapPanel === "" ? qsTr("%1. Tap a panel for its marks.").arg(page.evidence.mapWords)
            : qsTr("%1. Tap it for the whole car.").arg(page.evidence.mapWords)
        size: Theme.note
        color: Theme.pencil
    }
    Flickable {
        id: view
        x: page.wide ? page.paneX - Theme.gutter : 0
        y: page.wide ? page.headEnd + 4 : map.y + map.height + Theme.gap
        width: page.width - x
        height: Math.max(0, page.actsTop - Theme.gap - page.undoRoom - y)
        contentHeight: body.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: body
            x: Theme.gutter
            width: view.width - 2 * Theme.gutter
            bottomPadding: Theme.gap
            spacing: Theme.gap

            Row {
                width: parent.width
                spacing: 10

                StateShape {
                    id: shape
                    kind: page.evidence.answerShape
                    size: 26
                    ground: Theme.paper
                }
                Column {
                    width: parent.width - shape.width - 10
                    spacing: 2

                    Words {
                        objectName: "evidenceAnswer"
                        width: parent.width
                        text: page.evidence.answer
                        bold: true
                        size: Theme.lead
                    }
                    Words {
                        objectName: "evidenceLookAt"
                        width: parent.width
                        visible: text !== ""
                        text: page.evidence.lookAt
                        color: Theme.pencil
                    }
                }
            }
            CauseSaid {
                width: parent.width
                evidence: page.evidence
                onSettled: row => page.evidence.mainWaits ? page.whoAsked() : page.evidence.settle(row)
            }
            Repeater {
                model: page.evidence.signs

                SignRow {
                    required property string key

                    objectName: "sign"
                    width: body.width
                    onShowAsked: page.evidence.showSign(key)
                    onSumAsked: {
                        page.evidence.openSum(key);
                        sums.opened = true;
                    }
                }
            }
            PlainButton {
                objectName: "otherSigns"
                width: parent.width
                height: implicitHeight
                visible: page.evidence.otherCount > 0
                pressable: visible
                text: page.others ? qsTr("Hide the other signs")
                    : page.evidence.otherCount === 1 ? qsTr("1 more sign near chance")
                    : qsTr("%1 more signs near chance").arg(page.evidence.otherCount)
                onClicked: page.others = !page.others
            }
            Repeater {
                model: page.others ? page.evidence.otherSigns : null

                SignRow {
                    required property string key

                    width: body.width
                    onShowAsked: page.evidence.showSign(key)
                    onSumAsked: {
                        page.evidence.openSum(key);
                        sums.opened = true;
                    }
                }
            }
            Words {
                width: parent.width
                visible: page.evidence.clueCount > 0
                topPadding: 8
                text: qsTr("What the dirt looks like")
                bold: true
                Accessible.role: Accessible.Heading
            }
            Repeater {
                model: page.evidence.clues

                ClueRow {
                    width: body.width
                }
            }
            SprayedIn {
                width: parent.width
                booth: page.booth
                onWhoAsked: page.whoAsked()
            }
            CauseChips {
                width: parent.width
                visible: main.visible
                evidence: page.evidence
            }
        }
    }
    SlabButton {
        id: main
        objectName: "evidenceMain"
        x: page.paneX
        y: page.height - height - Theme.gap
        width: page.paneWidth
        height: implicitHeight
        visible: page.evidence.mainAct !== EvidenceViewModel.None
        pressable: visible
        text: page.evidence.mainText
        secondLine: page.evidence.mainSecond
        waits: page.evidence.mainWaits
        onRefused: page.whoAsked()
        onClicked: page.evidence.act()
    }
    SumSheet {
        id: sums
        anchors.fill: parent
        sum: page.evidence.sum
    }
}
