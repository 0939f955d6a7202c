// TimeLineRow: one entry: when (time), what (words), who (person); takenBack: struck through, with
// takenBackWords below; refused: why it is not obeyed, empty when it is; doubt: why its clock is doubtful, empty when it is not; file, store: the
// picture that it is about. Signal: clicked.
import QtQuick
import Jambline.Theme
import Jambline.Job
import Jambline.Screens

PaperCard {
    id: row

    required property string time
    required property string person
    required property string words
    required property bool takenBack
    required property string takenBackWords
    required property string doubt
    property string refused: ""
    property string file: ""
    property PictureStore store: null

    readonly property string doubtWords: doubt === "" ? "" : qsTr("Clock in doubt")

    pressable: true
    quiet: true
    name: {
        const said = [qsTr("%1, %2").arg(time).arg(words), person, takenBackWords, refused, doubtWords];
        return qsTr("%1. Opens the entry.").arg(said.filter(part => part !== "").join(qsTr(", ")));
    }

    Item {
        width: parent.width
        height: Math.max(clock.height, lines.height, picture.visible ? picture.height : 0)

        TimeText {
            id: clock
            y: 2
            text: row.time
            doubtful: row.doubt !== ""
            mute: true
            bold: true
        }
        PictureFrame {
            id: picture
            objectName: "timeLinePicture"
            visible: row.file !== "" && row.store !== null
            anchors.right: parent.right
            width: 72
            height: 56
            store: row.store
            file: row.file
        }
        Column {
            id: lines
            x: Math.max(64 * Theme.textScale, clock.width + 12)
            width: parent.width - x - (picture.visible ? picture.width + Theme.gap : 0)
            spacing: 2

            Words {
                width: parent.width
                text: row.words
                mute: true
                font.strikeout: row.takenBack || row.refused !== ""
                color: row.takenBack || row.refused !== "" ? Theme.pencil : Theme.ink
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: row.person
                mute: true
                size: Theme.note
                color: Theme.pencil
            }
            Words {
                width: parent.width
                visible: row.takenBack
                text: row.takenBackWords
                mute: true
                size: Theme.note
                color: Theme.oxide
            }
            Row {
                width: parent.width
                visible: row.refused !== ""
                spacing: 8

                StateShape {
                    id: diamond
                    kind: ShapeKind.Disputed
                    size: 20
                }
                Words {
                    width: parent.width - diamond.width - 8
                    text: row.refused
                    mute: true
                    bold: true
                    size: Theme.note
                    color: Theme.oxide
                }
            }
            Words {
                width: parent.width
                visible: text !== ""
                text: row.doubtWords
                mute: true
                bold: true
                size: Theme.note
                color: Theme.ochreInk
            }
        }
    }
}
