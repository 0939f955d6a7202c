// Odds: how likely a promise is, or how late it will be, with what that is said of below it.
// chance, percent, about: words; outlook: 0 plain, 1 careful, 2 trouble; alignRight; size of the chance.
// natural: its width on one line.
import QtQuick
import Jambline.Theme

Column {
    id: odds

    property string chance: ""
    property string percent: ""
    property string about: ""
    property int outlook: 0
    property bool alignRight: false
    property int size: Theme.body
    readonly property real natural: Math.max(figure.natural, note.natural)

    Words {
        id: figure
        width: parent.width
        visible: text !== ""
        horizontalAlignment: odds.alignRight ? Text.AlignRight : Text.AlignLeft
        text: odds.chance
        mute: true
        bold: odds.outlook > 0
        size: odds.size
        color: [Theme.ink, Theme.ochreInk, Theme.oxide][odds.outlook]
    }
    Words {
        id: note
        width: parent.width
        visible: text !== ""
        horizontalAlignment: figure.horizontalAlignment
        text: odds.percent !== "" ? qsTr("%1 %2").arg(odds.percent).arg(odds.about) : odds.about
        mute: true
        size: Theme.note
        color: Theme.pencil
    }
}
