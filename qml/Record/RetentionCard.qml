// RetentionCard: a class of records: what it is, how long it is usually kept and by which rule, and
// how long here. The delegate of KeepAndForget: its fields come from the model's roles. Signal: clicked.
import QtQuick
import Jambline.Theme

PaperCard {
    id: card

    required property string key
    required property string title
    required property string covers
    required property string usual
    required property string source
    required property string own  // "": as is usual
    required property bool fewer
    required property string spoken

    pressable: true
    must: fewer
    name: qsTr("%1 Opens the time.").arg(spoken)

    Column {
        width: parent.width
        spacing: 4

        Words {
            width: parent.width
            text: qsTr("%1: %2").arg(card.title).arg(card.own !== "" ? qsTr("%1 here").arg(card.own) : card.usual)
            mute: true
            bold: true
        }
        Words {
            width: parent.width
            text: card.covers
            mute: true
        }
        Row {
            visible: card.fewer
            width: parent.width
            spacing: 8

            StateShape {
                id: shape
                kind: ShapeKind.Must
                size: 20
            }
            Words {
                width: parent.width - shape.width - 8
                text: qsTr("fewer than usual: a rule may ask for longer")
                mute: true
                color: Theme.oxide
            }
        }
        Words {
            width: parent.width
            text: card.own !== "" ? qsTr("usual: %1 · %2").arg(card.usual).arg(card.source) : card.source
            mute: true
            size: Theme.note
            color: Theme.pencil
        }
    }
}
