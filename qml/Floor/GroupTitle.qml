// GroupTitle: the heading over a group of cars; a list sets its section.
import QtQuick
import Jambline.Theme

Item {
    id: title

    required property string section

    width: parent ? parent.width : 0
    height: words.height + 12

    Words {
        id: words
        x: Theme.gutter
        y: 4
        width: parent.width - 2 * Theme.gutter
        text: title.section
        bold: true
        color: Theme.pencil
        Accessible.role: Accessible.Heading
    }
}
