// WaitRows: what the car waits for, each with "Goes on" in one tap; and the way to say that it waits.
// wait: the view model. Signal: whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: rows

    property WaitViewModel wait: null

    signal whoAsked

    visible: wait?.mayWait ?? false
    spacing: Theme.gap

    Repeater {
        model: rows.wait?.waits ?? null

        Item {
            id: one

            required property int index
            required property string key
            required property string title
            required property string words
            required property bool isLate
            readonly property bool folded: width < 300 * Theme.textScale

            width: rows.width
            height: folded ? said.height + Theme.gap + on.height : Math.max(said.height, on.height)

            FactRow {
                id: said
                objectName: "carWait" + one.index
                width: one.folded ? one.width : one.width - on.width - Theme.gap
                height: one.folded ? implicitHeight : Math.max(implicitHeight, on.implicitHeight)
                title: one.title
                words: one.words
                shape: ShapeKind.Waits
                alarm: one.isLate
                onClicked: {
                    rows.wait.openWait(one.key);
                    rows.wait.ask();
                }
            }
            PlainButton {
                id: on
                objectName: "carGoesOn" + one.index
                y: one.folded ? said.height + Theme.gap : 0
                x: one.width - width
                width: one.folded ? one.width : Math.max(104, implicitWidth)
                height: one.folded ? implicitHeight : Math.max(said.height, implicitHeight)
                text: qsTr("Goes on")
                name: qsTr("Goes on, %1").arg(one.title)
                onClicked: rows.wait.mayKeep ? rows.wait.goesOn(one.key) : rows.whoAsked()
            }
        }
    }
    FactRow {
        objectName: "carWaits"
        width: parent.width
        title: qsTr("The car waits")
        words: rows.wait?.rowWords ?? ""
        onClicked: rows.wait.ask()
    }
}
