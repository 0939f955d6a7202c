#include "paper.h"

#include <QMetaMethod>
#include <QMetaProperty>

Paper::Paper(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setAntialiasing(true);
}

void Paper::componentComplete() {
  QQuickPaintedItem::componentComplete();
  const QMetaObject* meta = metaObject();
  const QMetaMethod slot = staticMetaObject.method(staticMetaObject.indexOfSlot("refresh()"));
  for (int i = staticMetaObject.propertyCount(); i < meta->propertyCount(); ++i) {
    const QMetaProperty property = meta->property(i);
    if (property.isWritable() && property.hasNotifySignal()) {
      connect(this, property.notifySignal(), this, slot);
    }
  }
  connect(this, &QQuickItem::widthChanged, this, &Paper::refresh);
  connect(this, &QQuickItem::heightChanged, this, &Paper::refresh);
  connect(this, &QQuickItem::visibleChanged, this, &Paper::shownOrHidden);
  setFlag(ItemHasContents, false);
  refresh();
}

// What has no size has no image to be painted into. One that is hidden keeps the image it has.
void Paper::refresh() {
  stale_ = true;
  shownOrHidden();
}

void Paper::shownOrHidden() {
  if (!stale_ || !isVisible()) return;
  stale_ = false;
  setFlag(ItemHasContents, width() > 0 && height() > 0);
  update();
}
