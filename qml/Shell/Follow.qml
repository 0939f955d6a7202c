// Follow: scrolls what has the focus into sight. item: the window's activeFocusItem.
import QtQuick

QtObject {
    property Item item: null

    // Where a view of `view` at `now` must go to show [at, at + size], in content from `low` on.
    function to(now: real, view: real, at: real, size: real, low: real, content: real): real {
        const high = Math.max(low, low + content - view);
        const next = Math.min(Math.max(now, at + size - view), at);
        return next === now || isNaN(high) ? next : Math.max(low, Math.min(high, next));
    }

    function reveal(flickable: Flickable) {
        const list = flickable instanceof ListView;  // it only guesses at how long it is
        const at = flickable.contentItem.mapFromItem(item, 0, 0, item.width, item.height);
        flickable.contentX = to(flickable.contentX, flickable.width, at.x, at.width, flickable.originX,
            flickable.contentWidth);
        flickable.contentY = to(flickable.contentY, flickable.height, at.y, at.height, flickable.originY,
            list ? NaN : flickable.contentHeight);
    }

    function follow() {
        for (let at = item?.parent ?? null; at !== null; at = at.parent) {
            const flickable = at as Flickable;
            if (flickable)
                reveal(flickable);
        }
    }

    // Once more when a list has made the rows that it had guessed at.
    onItemChanged: {
        follow();
        Qt.callLater(follow); // qmllint disable
    }
}
