// ShotJudged: what is wrong with a picture that was just taken, and what to do about it; or that a
// picture of a file is good. shot must be set.
pragma ComponentBehavior: Bound

import QtQuick
import Jambline.Theme
import Jambline.Screens

PaperCard {
    id: card

    required property ShotViewModel shot

    objectName: "shotJudged"
    name: qsTr("%1. %2").arg(shot.judgedWord).arg(shot.judgedAdvice)

    Column {
        width: parent.width
        spacing: 10

        Row {
            width: parent.width
            spacing: 12

            StateShape {
                id: mark
                kind: card.shot.judgedGood ? ShapeKind.Done : ShapeKind.Waits
                size: 28
            }
            Column {
                width: parent.width - mark.width - 12
                spacing: 2

                Words {
                    objectName: "shotWord"
                    width: parent.width
                    text: card.shot.judgedWord
                    mute: true
                    bold: true
                    size: Theme.title
                }
                Words {
                    width: parent.width
                    visible: text !== ""
                    text: card.shot.judgedAdvice
                    mute: true
                }
                Words {
                    width: parent.width
                    visible: text !== ""
                    text: card.shot.offerWords
                    mute: true
                    size: Theme.note
                    color: Theme.pencil
                    wrapMode: Text.WrapAtWordBoundaryOrAnywhere
                }
            }
        }
        Row {
            id: lines
            width: parent.width
            spacing: 16
            visible: !card.shot.judgedGood

            Repeater {
                model: card.shot.measures

                Column {
                    id: one

                    required property string title
                    required property string spoken
                    required property double value
                    required property double limit
                    required property bool out

                    width: (lines.width - 32) / 3
                    spacing: 2

                    Words {
                        width: parent.width
                        text: one.title
                        mute: true
                        size: Theme.note
                        color: Theme.pencil
                    }
                    LimitLine {
                        width: parent.width
                        name: one.spoken
                        value: one.value
                        limit: one.limit
                        filled: true
                        out: one.out
                    }
                }
            }
        }
    }
}
