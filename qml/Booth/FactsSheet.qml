// FactsSheet: what the shop knows of one booth, each number in its field, in the units of the device.
// facts: the view model; show() when it was opened. Signal: whoAsked.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

Sheet {
    id: sheet

    required property BoothFactsViewModel facts

    signal whoAsked

    function show() {
        opened = true;
    }

    title: facts.title

    Connections {
        target: sheet.facts
        function onKept() {
            sheet.close();
        }
    }

    Column {
        width: parent.width
        spacing: 12
        bottomPadding: Theme.gap

        Words {
            objectName: "factsKnown"
            width: parent.width
            visible: text !== ""
            text: sheet.facts.knownWords
            bold: true
        }
        Words {
            width: parent.width
            text: qsTr("From the booth's maker, an authority, or measured. What nobody knows stays empty.")
            color: Theme.pencil
        }
        Column {
            id: fields
            width: parent.width
            spacing: 12

            Repeater {
                model: sheet.facts.fields

                FaceField {
                    required property string key
                    required property string unit
                    required property string hint
                    required property string typed
                    required label
                    required wrong

                    objectName: "fact_" + key
                    width: fields.width
                    text: typed
                    placeholder: hint
                    tail: unit
                    maximumLength: 100
                    onEdited: words => sheet.facts.type(key, words)
                }
            }
        }
        SlabButton {
            objectName: "factsKeep"
            width: parent.width
            height: implicitHeight
            text: qsTr("Keep what is known")
            secondLine: waits ? qsTr("say who you are first") : ""
            waits: !sheet.facts.mayKeep
            onRefused: sheet.whoAsked()
            onClicked: sheet.facts.keep()
        }
    }
}
