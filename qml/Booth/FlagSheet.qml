// FlagSheet: "do not spray" is said of the person who is open, or taken back: what it does, and one
// button. Nothing of why is asked.
import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property RegisterViewModel protection

    title: protection.flagged ? qsTr("May spray again") : qsTr("Do not spray")

    Connections {
        target: sheet.protection
        function onKept() {
            sheet.close();
        }
    }

    Column {
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gutter

        Words {
            width: parent.width
            text: sheet.protection.flagged
                ? qsTr("A manager takes it back, after a doctor has said so. Nothing of what the doctor found is kept here.")
                : qsTr("Before the gun, %1 is stopped, with no way round. Nothing of why is asked or kept. Only a manager takes it back.").arg(sheet.protection.personName)
            size: Theme.lead
        }
        SlabButton {
            objectName: "flagKeep"
            width: parent.width
            height: implicitHeight
            text: sheet.protection.flagged ? qsTr("%1 may spray again").arg(sheet.protection.personName)
                                           : qsTr("%1: do not spray").arg(sheet.protection.personName)
            onClicked: sheet.protection.sayDoNotSpray(!sheet.protection.flagged)
        }
    }
}
