// GroupTitles: the heading of a list's groups as a component. It stands in a file of its own because
// Qt 6.4 makes no section delegate out of a file with bound components.
import QtQuick

QtObject {
    readonly property Component title: Component {
        GroupTitle {}
    }
}
