// FigureBlock: a number that opens to its sum; the whole block is the target. value ("47"), unit,
// label (above), limitWords ("keep 40"), note (below). grade: FigureBlock.Plain, Estimate, Learned,
// Missing (dashed; then value says what is missing). out: the limit is broken (triangle and oxide).
// pressable by default. Signal: clicked (open the sum). Height 72 and up.
import QtQuick
import Jambline.Theme
import "said.js" as Said

PaperCard {
    id: block

    enum Grade { Plain, Estimate, Learned, Missing }

    property string label: ""
    property string value: ""
    property string unit: ""
    property string limitWords: ""
    property string note: ""
    property int grade: FigureBlock.Plain
    property bool out: false
    property int valueSize: Theme.title

    readonly property string gradeWord: grade === FigureBlock.Estimate ? qsTr("estimate")
        : grade === FigureBlock.Learned ? qsTr("learned") : grade === FigureBlock.Missing ? qsTr("missing") : ""

    pressable: true
    dashed: grade === FigureBlock.Missing
    name: {
        const all = [label, unit === "" ? value : qsTr("%1 %2").arg(value).arg(unit), limitWords, gradeWord, note];
        const said = Said.join(all, ", ");
        return pressable ? qsTr("%1. Opens the sum.").arg(said) : said;
    }

    Column {
        width: parent.width
        spacing: 2

        Words {
            width: parent.width
            visible: text !== ""
            text: block.label
            mute: true
            size: Theme.note
            color: Theme.pencil
        }
        Flow {
            width: parent.width
            spacing: 6

            Item {
                visible: block.out
                width: must.width
                height: figure.height

                StateShape {
                    id: must
                    anchors.verticalCenter: parent.verticalCenter
                    kind: ShapeKind.Must
                    size: Math.min(figure.height, 20 * Theme.textScale)
                }
            }
            Words {
                id: figure
                width: Math.min(natural, parent.width)
                text: block.value
                mute: true
                bold: block.grade !== FigureBlock.Missing
                size: block.grade === FigureBlock.Missing ? Theme.body : block.valueSize
            }
            Words {
                height: figure.height
                verticalAlignment: Text.AlignVCenter
                visible: text !== ""
                text: block.unit
                mute: true
            }
            Words {
                height: figure.height
                verticalAlignment: Text.AlignVCenter
                visible: text !== ""
                text: block.limitWords
                mute: true
                bold: block.out
                size: Theme.note
                color: block.out ? Theme.oxide : Theme.pencil
            }
        }
        Words {
            width: parent.width
            visible: text !== ""
            text: Said.join([block.gradeWord, block.note], " · ")
            mute: true
            size: Theme.note
            color: Theme.pencil
        }
    }
}
