// SprayedIn: the booth in which the car was sprayed, as far as it was said; one tap says it.
// Nothing where the shop has no booth. Signal: whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Column {
    id: part

    required property BoothViewModel booth

    signal whoAsked

    visible: booth.spraysCar
    spacing: Theme.gap

    Words {
        objectName: "sprayedWords"
        width: parent.width
        topPadding: 8
        text: part.booth.sprayedWords
        bold: true
    }
    Flow {
        width: parent.width
        spacing: Theme.gap

        Repeater {
            model: part.booth.sprayedIn

            PlainButton {
                required property int index
                required property string key
                required property string title
                required chosen

                objectName: "sprayedIn" + index
                width: Math.min(part.width, Math.max(112, implicitWidth))
                height: implicitHeight
                text: title
                name: qsTr("Sprayed in %1").arg(title)
                onClicked: part.booth.mayKeep ? part.booth.saySprayedIn(key) : part.whoAsked()
            }
        }
    }
}
