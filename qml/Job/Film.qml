// Film: the film of one panel: what its clear allows and what that rests on, the spots to scale, the
// readings and the keys to type them. film, inspect: the view models. wide: map and what is said
// left, the typing in a pane right; on a desk the spots are typed in a row. On a phone the keys
// come with the main act and go with "Panel".
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

FocusScope {
    id: page

    required property FilmViewModel film
    required property InspectViewModel inspect
    property bool wide: false
    property bool typing: false
    property real undoRoom: 0  // kept free above the main act
    readonly property bool desk: wide && Theme.desk
    readonly property bool beside: wide && width >= 720
    // The undo row never lies on the keys: it takes the place of the readings, until one is typed.
    readonly property bool undoAway: tight && (film.readingCount > 0 || film.pending >= 0)
    readonly property real actsTop: tight ? pane.y + pad.keysTop : choices.parent === page ? choices.y : desk ? height : main.y
    readonly property real actsX: main.x
    readonly property real actsWidth: main.width
    readonly property real paneWidth: beside ? (desk ? 480 : 400) : width - 2 * Theme.gutter
    readonly property real paneX: width - Theme.gutter - paneWidth
    readonly property bool keys: here && (beside ? !desk : typing)
    readonly property bool tight: typing && !beside && here
    readonly property bool here: film.panel !== ""
    readonly property bool large: Theme.textScale > 1.2
    readonly property real footRoom: tight ? 4 : Theme.gap

    implicitHeight: tight ? head.height + pad.implicitHeight + main.height + 2 * Theme.gap + footRoom
        : desk ? (large ? 640 : 460)
        : beside ? head.height + choices.height + pad.implicitHeight + more.height + main.height + undoRoom + 6 * Theme.gap
        : head.height + main.height + undoRoom + (large ? 260 : choices.height + 300)

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Film, %1").arg(film.panelTitle)

    Keys.onEscapePressed: event => {
        event.accepted = page.typing && !page.beside;
        page.typing = false;
    }

    Connections {
        target: page.film
        function onSumOpened() {
            sumSheet.opened = true;
        }
    }

    Item {
        id: head

        readonly property bool wrong: page.tight && page.film.wrong !== ""

        x: Theme.gutter
        width: parent.width - 2 * Theme.gutter
        height: back.visible && page.large ? title.height + Theme.gap + back.height
            : Math.max(title.height, back.visible ? back.height : 0)

        StateShape {
            id: mustShape
            visible: head.wrong
            kind: ShapeKind.Must
            size: 20
            y: title.y + (title.height - height) / 2
        }
        Words {
            id: title
            x: head.wrong ? 28 : 0
            width: (page.tight && !page.large ? thick.x - 12 : parent.width) - x
            y: page.tight && !page.large ? (back.height - height) / 2 : 0
            text: head.wrong ? page.film.wrong : page.tight
                ? qsTr("%1, %2: %3").arg(page.film.panelTitle).arg(page.film.spotWords.toLowerCase()).arg(page.film.meanWords)
                : page.here ? qsTr("Film, %1").arg(page.film.panelTitle) : qsTr("Film")
            bold: true
            size: page.tight ? Theme.note : Theme.screen
            color: head.wrong ? Theme.oxide : Theme.ink
            Accessible.role: head.wrong ? Accessible.AlertMessage : Accessible.Heading
        }
        PlainButton {
            id: thick
            objectName: page.tight ? "filmThick" : ""
            visible: page.tight
            pressable: visible
            x: back.x - width - Theme.gap
            y: back.y
            width: Math.min(implicitWidth, 88 * Theme.textScale)
            height: back.height
            text: page.film.thickWords
            textSize: Theme.note
            chosen: page.film.thick
            onClicked: page.film.switchThick()
        }
        PlainButton {
            id: back
            objectName: "filmPanel"
            visible: page.tight
            pressable: visible
            x: parent.width - width
            y: page.large ? parent.height - height : 0
            height: Math.max(implicitHeight, thick.implicitHeight)
            text: qsTr("Panel")
            textSize: Theme.note
            name: qsTr("Back to the panel")
            onClicked: page.typing = false
        }
    }
    PaperCard {
        visible: !page.here
        x: Theme.gutter
        y: head.height + Theme.gap
        width: parent.width - 2 * Theme.gutter
        dashed: true

        Words {
            width: parent.width
            text: qsTr("No panel is open. The film is read on one panel, from looking over or from the plan.")
            color: Theme.pencil
        }
    }
    Flickable {
        id: view
        visible: page.here && !page.tight
        y: head.height + Theme.gap
        width: page.beside ? page.paneX : parent.width
        height: (page.beside ? parent.height : page.actsTop - page.undoRoom) - y - Theme.gap
        contentHeight: body.height
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds

        Column {
            id: body
            x: Theme.gutter
            width: view.width - 2 * Theme.gutter
            spacing: Theme.gap
            bottomPadding: Theme.gap

            Words {
                width: parent.width
                text: page.film.panelFacts
                size: Theme.note
                color: Theme.pencil
            }
            FilmSaid {
                width: parent.width
                film: page.film
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: page.film.askedWords
                bold: true
                size: Theme.note
            }
            FilmMap {
                width: parent.width
                height: Math.max(180, Math.min(360, width * 0.62, view.height - 300))
                film: page.film
                inspect: page.inspect
            }
            Words {
                width: parent.width
                visible: !page.keys && !page.desk && text !== ""
                text: page.film.wrong
                bold: true
                size: Theme.note
                color: Theme.oxide
                Accessible.role: Accessible.AlertMessage
            }
            Item {
                id: bodyChoices
                visible: page.large && !page.beside
                width: parent.width
                height: choices.height
            }
            Item {
                id: belowKept
                visible: !page.desk
                width: parent.width
                height: keptRows.height
            }
        }
    }
    Column {
        id: pane
        visible: page.here && (page.beside || page.typing)
        x: page.paneX
        y: head.height + Theme.gap
        width: page.paneWidth
        spacing: Theme.gap

        Item {
            width: parent.width
            height: page.beside ? choices.height : 0
            visible: page.beside

            Item {
                id: paneChoices
                anchors.fill: parent
            }
        }
        FilmTyping {
            id: pad
            visible: page.keys
            width: parent.width
            height: implicitHeight
            focus: page.keys
            tight: page.tight
            film: page.film
        }
        PlainButton {
            id: more
            objectName: page.tight ? "" : "filmThick"
            visible: page.keys && page.beside
            pressable: visible
            width: parent.width
            text: page.film.thickWords
            chosen: page.film.thick
            onClicked: page.film.switchThick()
        }
        FilmRow {
            visible: page.desk
            width: parent.width
            film: page.film
        }
        Flickable {
            visible: page.desk
            width: parent.width
            height: page.height - pane.y - y - Theme.gap - page.undoRoom
            contentHeight: besideKept.height
            clip: true
            interactive: contentHeight > height
            boundsBehavior: Flickable.StopAtBounds

            Item {
                id: besideKept
                width: parent.width
                height: keptRows.height
            }
        }
    }
    FilmKept {
        id: keptRows
        parent: page.desk ? besideKept : belowKept
        width: parent.width
        film: page.film
        onAsked: page.typing = true
    }
    FilmChoices {
        id: choices
        parent: page.beside ? paneChoices : page.large ? bodyChoices : page
        visible: page.here && !page.tight
        x: parent === page ? Theme.gutter : 0
        y: parent === page ? main.y - height - Theme.gap : 0
        width: page.paneWidth
        film: page.film
        over: page
    }
    SlabButton {
        id: main
        objectName: "filmMain"
        x: page.paneX
        y: parent.height - height - page.footRoom
        width: page.paneWidth
        height: implicitHeight
        visible: page.here && (page.keys || !page.beside)
        pressable: visible
        text: page.keys ? page.film.mainText : qsTr("Type the readings of spot %1").arg(page.film.spot)
        secondLine: page.keys ? page.film.mainSecond : ""
        waits: page.keys && page.film.mainWaits
        onClicked: page.keys ? page.film.mainAct() : page.typing = true
    }
    SumSheet {
        id: sumSheet
        anchors.fill: parent
        sum: page.film.sum
    }
}
