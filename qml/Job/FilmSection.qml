// FilmSection: a clear drawn to scale: what is there, what the work takes (dashed), and the line to
// keep. clearUm, afterUm, keepUm; keepWords beside the line. Spoken by what stands beside it.
import QtQuick
import Jambline.Theme

Item {
    id: section

    property real clearUm: 0
    property real afterUm: 0
    property real keepUm: 0
    property string keepWords: ""
    readonly property real most: Math.max(1, clearUm, keepUm) * 1.12
    readonly property real bar: 34

    function tall(um: real): real {
        return Math.max(0, Math.min(1, um / most)) * height;
    }

    implicitWidth: 104
    implicitHeight: 96
    Accessible.ignored: true

    Rectangle {
        width: section.bar
        height: section.tall(section.afterUm)
        y: section.height - height
        color: Theme.steel
        border.width: Theme.line
        border.color: Theme.ink
    }
    DashFrame {
        width: section.bar
        height: section.tall(section.clearUm) - section.tall(section.afterUm)
        y: section.height - section.tall(section.clearUm)
        visible: height > 2
        color: Theme.edge
    }
    Row {
        y: section.height - section.tall(section.keepUm) - 1
        x: -4
        spacing: 4

        Repeater {
            model: Math.floor((section.bar + 12) / 10)

            Rectangle {
                width: 6
                height: 2
                color: Theme.oxide
            }
        }
    }
    Words {
        x: section.bar + 10
        y: Math.max(0, Math.min(section.height - height, section.height - section.tall(section.keepUm) - height / 2))
        width: section.width - x
        text: section.keepWords
        mute: true
        bold: true
        size: Theme.small
        color: Theme.oxide
    }
}
