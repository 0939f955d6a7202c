#include "paper.h"

Paper::Paper(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setAntialiasing(true);
  connect(this, &Paper::changed, this, [this] { update(); });
  connect(this, &QQuickItem::widthChanged, this, [this] { update(); });
  connect(this, &QQuickItem::heightChanged, this, [this] { update(); });
}
