// PanelPlanCard: one panel of the form: painted or not; when painted, on the car or loose, finish,
// treatment and what it is made of, each one press further in its list.
// Signals: flipped, placeAsked, finishAsked, treatmentAsked, substrateAsked.
import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    required property string title
    required property string where
    required property string finish
    required property string treatment
    required property string substrate
    required property bool doNotCut
    required property bool painted

    signal flipped
    signal placeAsked
    signal finishAsked
    signal treatmentAsked
    signal substrateAsked

    padding: 0
    chosen: painted

    component Choice: PlainButton {
        required property string panelTitle
        property string what

        width: Math.max(112, implicitWidth)
        bare: true
        name: qsTr("%1, %2: %3. Changes it.").arg(panelTitle).arg(what).arg(text)
    }

    Column {
        width: parent.width

        PaperCard {
            width: parent.width
            pressable: true
            quiet: true
            name: qsTr("%1, %2. Changes it.").arg(card.title).arg(card.painted ? qsTr("painted") : qsTr("not painted"))
            onClicked: card.flipped()

            Item {
                width: parent.width
                height: Math.max(mark.height, words.height)

                StateShape {
                    id: mark
                    anchors.verticalCenter: parent.verticalCenter
                    kind: card.painted ? ShapeKind.Done : ShapeKind.NotYet
                }
                Words {
                    id: words
                    x: mark.width + 12
                    width: parent.width - x
                    anchors.verticalCenter: parent.verticalCenter
                    text: card.painted ? qsTr("%1, %2").arg(card.title).arg(card.where) : card.title
                    mute: true
                    bold: card.painted
                    size: Theme.lead
                }
            }
        }
        Flow {
            width: parent.width
            visible: card.painted

            Choice {
                panelTitle: card.title
                what: qsTr("place")
                text: card.where
                secondLine: qsTr("place")
                pressable: card.painted
                onClicked: card.placeAsked()
            }
            Choice {
                panelTitle: card.title
                what: qsTr("finish")
                text: card.finish
                secondLine: card.doNotCut ? qsTr("do not cut") : qsTr("finish")
                pressable: card.painted
                onClicked: card.finishAsked()
            }
            Choice {
                panelTitle: card.title
                what: qsTr("treatment")
                text: card.treatment
                secondLine: qsTr("treatment")
                pressable: card.painted
                onClicked: card.treatmentAsked()
            }
            Choice {
                panelTitle: card.title
                what: qsTr("made of")
                text: card.substrate
                secondLine: qsTr("made of")
                pressable: card.painted
                onClicked: card.substrateAsked()
            }
        }
    }
}
