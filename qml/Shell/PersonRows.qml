// PersonRows: one person's page on the sheet of the shop: name, role, leaving, erasing the name.
// What cannot be taken back is asked in a second step that says so.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: rows

    required property ShopViewModel shop
    property RetentionViewModel retention: null
    property bool askLeaving: false
    property bool askErasing: false
    readonly property bool asking: askLeaving || askErasing

    spacing: Theme.gap

    component Question: Words {
        width: parent ? parent.width : 0
        wrapMode: Text.WordWrap
    }

    Connections {
        target: rows.shop
        function onPersonChanged() {
            rows.askLeaving = false;
            rows.askErasing = false;
        }
    }

    Words {
        width: parent.width
        text: rows.shop.personStanding
        color: Theme.pencil
    }
    FaceField {
        id: field
        objectName: "newName"
        visible: !rows.asking && !rows.shop.personLeft
        width: parent.width
        label: qsTr("Name")
        text: rows.shop.personName
        maximumLength: 40
    }
    SlabButton {
        objectName: "keepName"
        visible: !rows.asking && !rows.shop.personLeft
        pressable: visible
        width: parent.width
        height: implicitHeight
        text: qsTr("Keep this name")
        secondLine: field.text.trim() === "" ? qsTr("needs a name")
            : field.text.trim() === rows.shop.personName ? qsTr("nothing is changed") : ""
        waits: secondLine !== ""
        onRefused: field.focusField()
        onClicked: rows.shop.rename(field.text)
    }
    Words {
        visible: !rows.asking && !rows.shop.personLeft && rows.shop.manager
        width: parent.width
        topPadding: 8
        text: qsTr("Role")
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }
    Flow {
        visible: !rows.asking && !rows.shop.personLeft && rows.shop.manager
        width: parent.width
        spacing: Theme.gap

        Repeater {
            model: rows.shop.roles

            PlainButton {
                required property int index
                required property string modelData

                width: (rows.width - Theme.gap) / 2
                height: implicitHeight
                text: modelData
                chosen: rows.shop.personRole === index
                onClicked: {
                    if (!chosen)
                        rows.shop.changeRole(index);
                }
            }
        }
    }
    Question {
        visible: !rows.shop.manager && !rows.shop.personErased
        text: rows.shop.personLeft ? qsTr("A manager can erase the name.")
                                   : qsTr("A manager changes roles and says who has left.")
        color: Theme.pencil
    }
    PlainButton {
        objectName: "letGo"
        visible: rows.shop.manager && !rows.asking && !rows.shop.personLeft
        pressable: visible
        width: parent.width
        height: implicitHeight
        text: qsTr("Has left the shop")
        onClicked: rows.askLeaving = true
    }
    Question {
        visible: rows.askLeaving
        text: qsTr("%1 can then not be chosen any more, and a clock that runs stops. What %1 did stays, with the name. Who comes back is added anew.").arg(rows.shop.personName)
    }
    SlabButton {
        objectName: "letGoSure"
        visible: rows.askLeaving
        pressable: visible
        width: parent.width
        height: implicitHeight
        text: qsTr("Yes, %1 has left").arg(rows.shop.personName)
        onClicked: {
            rows.askLeaving = false;
            rows.shop.letGo();
        }
    }
    PlainButton {
        objectName: "eraseName"
        visible: rows.shop.manager && rows.shop.personLeft && !rows.shop.personErased && !rows.asking
        pressable: visible
        width: parent.width
        height: implicitHeight
        text: qsTr("Erase name, notes and signatures")
        secondLine: qsTr("asks once more")
        onClicked: {
            rows.retention?.wake();
            rows.askErasing = true;
        }
    }
    Question {
        visible: rows.askErasing
        text: qsTr("This cannot be taken back. The name, the notes and words on pictures that the person wrote, and signatures under the name go out of this device for good, and out of every device that exchanges entries with it. What the person did stays and reads as done by someone.")
        bold: true
    }
    Question {
        visible: rows.askErasing
        text: qsTr("It does not reach folders, reports and bundles that were written out before, nor notes in which somebody else typed the name. Before it, see how long the records have to be kept: fit tests and samples of what the person breathed go too.")
    }
    Question {
        objectName: "notOver"
        visible: rows.askErasing && text !== ""
        // loaded: read again when the cars have said their part
        text: rows.retention !== null && rows.askErasing && rows.retention.loaded ? rows.retention.notOverWords(rows.shop.person) : ""
        bold: true
    }
    SlabButton {
        objectName: "eraseNameSure"
        visible: rows.askErasing
        pressable: visible
        width: parent.width
        height: implicitHeight
        text: qsTr("Erase %1 for good").arg(rows.shop.personName)
        onClicked: {
            rows.askErasing = false;
            rows.shop.eraseName();
        }
    }
    PlainButton {
        objectName: "personBack"
        width: parent.width
        height: implicitHeight
        text: rows.asking ? qsTr("No, leave it") : qsTr("Back to the shop")
        onClicked: {
            if (!rows.asking)
                rows.shop.open("");
            rows.askLeaving = false;
            rows.askErasing = false;
        }
    }
}
