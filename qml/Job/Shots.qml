// Shots: the pictures that a stage wants, what is missing first; wide: as a wall with the pictures.
// shots: the view model; store: for pictures. Signals: shotAsked(stage, key), pictureAsked(picture),
// wallAsked.
pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property ShotsViewModel shots
    property PictureStore store: null
    property bool wide: false
    property real undoRoom: 0  // kept free above the acts
    readonly property real actsTop: acts.y
    readonly property real actsX: acts.x
    readonly property real actsWidth: acts.width
    readonly property real room: width - 2 * Theme.gutter
    readonly property bool none: shots.stage === ""

    implicitHeight: acts.height + undoRoom + 320

    signal shotAsked(string stage, string key)
    signal pictureAsked(string picture)
    signal wallAsked

    function open(key: string, picture: string) {
        if (picture !== "")
            pictureAsked(picture);
        else
            shotAsked(shots.stage, key);
    }

    PictureFiles {
        id: files
        onChosen: urls => page.shots.takeIn(urls)
    }
    DropArea {
        anchors.fill: parent
        onDropped: drop => {
            if (drop.hasUrls)
                page.shots.takeIn(drop.urls);
        }
    }

    component StageChip: PlainButton {
        required property string key
        required property string title
        required property string words
        required property int kind
        required property bool here

        objectName: "shotStage"
        text: title
        secondLine: words
        chosen: here
        shape: kind
        beside: true
        onClicked: page.shots.choose(key)
    }

    Flickable {
        id: chips
        objectName: "shotStages"
        visible: !page.none && !page.wide
        width: parent.width
        height: visible ? line.implicitHeight : 0
        contentWidth: line.width + 2 * Theme.gutter
        flickableDirection: Flickable.HorizontalFlick
        boundsBehavior: Flickable.StopAtBounds
        clip: true

        // The chosen stage is in sight.
        function follow() {
            for (let at = 0; at < chipList.count; ++at) {
                const chip = chipList.itemAt(at) as PlainButton;
                if (chip?.chosen)
                    contentX = Math.max(0, Math.min(contentWidth - width, line.x + chip.x + chip.width / 2 - width / 2));
            }
        }

        Component.onCompleted: Qt.callLater(follow) // qmllint disable

        Row {
            id: line
            x: Theme.gutter
            spacing: Theme.gap

            Repeater {
                id: chipList
                model: page.wide ? null : page.shots.stages

                StageChip {
                    onChosenChanged: Qt.callLater(chips.follow) // qmllint disable
                    width: Math.max(112, implicitWidth)
                    height: implicitHeight
                }
            }
        }
    }
    Flickable {
        id: side
        visible: !page.none && page.wide
        x: Theme.gutter
        width: 232
        height: parent.height
        contentHeight: column.height
        boundsBehavior: Flickable.StopAtBounds
        clip: true

        Column {
            id: column
            width: parent.width
            topPadding: Theme.gap
            bottomPadding: Theme.gap
            spacing: Theme.gap

            Repeater {
                model: page.wide ? page.shots.stages : null

                StageChip {
                    width: column.width
                    height: implicitHeight
                }
            }
        }
    }
    Flickable {
        id: view
        objectName: "shotsView"
        x: page.wide && !page.none ? side.x + side.width + Theme.gutter : Theme.gutter
        y: chips.height + (chips.visible ? Theme.gap : 0)
        width: parent.width - x - Theme.gutter
        height: acts.y - y - Theme.gap - page.undoRoom
        contentHeight: body.height
        clip: true
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: body
            width: parent.width
            bottomPadding: Theme.gap
            spacing: Theme.gap

            Words {
                objectName: "shotsCount"
                width: parent.width
                topPadding: page.wide ? Theme.gap : 0
                text: page.none ? page.shots.countWords
                    : Array.from([qsTr("%1: %2").arg(page.shots.stageTitle).arg(page.shots.countWords), page.shots.otherWords]).filter(words => words !== "").join(", ")
                bold: true
                size: Theme.lead
                Accessible.role: Accessible.Heading
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: page.shots.shutWords
                color: Theme.oxide
            }
            ImportCard {
                width: parent.width
                intake: page.shots.intake
            }
            PaperCard {
                objectName: "shotsEmpty"
                width: Math.min(parent.width, 560)
                visible: page.none
                dashed: true

                Column {
                    width: parent.width
                    spacing: 12

                    Row {
                        spacing: Theme.gap

                        Repeater {
                            model: [0, 7, 10]

                            Item {
                                id: blank

                                required property int modelData

                                width: 88
                                height: 88

                                Hatch {
                                    anchors.fill: parent
                                    radius: Theme.corner
                                    color: Theme.chalk
                                }
                                ShotDrawing {
                                    anchors.fill: parent
                                    view: blank.modelData
                                }
                            }
                        }
                    }
                    Words {
                        width: parent.width
                        text: qsTr("Which pictures a stage wants is set on the page of the shop.")
                    }
                }
            }
            Repeater {
                model: page.wide ? null : page.shots.shots

                ShotRow {
                    required property string key

                    width: body.width
                    height: implicitHeight
                    store: page.store
                    onClicked: page.open(key, picture)
                    onAgain: page.shotAsked(page.shots.stage, key)
                }
            }
            GridLayout {
                id: grid

                readonly property int most: Math.max(2, Math.floor((body.width + Theme.gap) / (190 * Theme.textScale)))

                visible: page.wide
                width: parent.width
                columns: most
                columnSpacing: Theme.gap
                rowSpacing: Theme.gap

                Repeater {
                    model: page.wide ? page.shots.shots : null

                    ShotCard {
                        required property string key

                        Layout.preferredWidth: Math.floor((grid.width - grid.columns * grid.columnSpacing) / grid.columns)
                        Layout.preferredHeight: implicitHeight
                        Layout.alignment: Qt.AlignTop
                        store: page.store
                        onClicked: page.open(key, picture)
                        onAgain: page.shotAsked(page.shots.stage, key)
                    }
                }
                Item { Layout.fillWidth: true }
            }
        }
    }
    Column {
        id: acts
        x: page.wide ? parent.width - width - Theme.gutter : Theme.gutter
        width: page.wide ? 376 : page.room
        y: parent.height - height - Theme.gap
        spacing: Theme.gap

        ActRow {
            width: parent.width
            visible: !page.none

            PlainButton {
                objectName: "shotsFiles"
                visible: page.shots.shutWords === ""
                pressable: visible
                text: qsTr("From files")
                secondLine: Theme.desk ? qsTr("or drop them here") : ""
                beside: false
                onClicked: files.ask()
            }
            PlainButton {
                objectName: "shotsWall"
                text: qsTr("All pictures")
                secondLine: Theme.desk ? qsTr("of this car") : ""
                beside: false
                onClicked: page.wallAsked()
            }
        }
        SlabButton {
            objectName: "shotsMain"
            width: parent.width
            height: implicitHeight
            visible: page.shots.shutWords === ""
            pressable: visible
            text: page.shots.mainText
            secondLine: page.shots.mainSecond
            onClicked: page.shotAsked(page.shots.stage, page.shots.nextKey)
        }
    }
}
