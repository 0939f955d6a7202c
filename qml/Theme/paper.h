// What all painted items of the theme share: antialiased, painted once into an image, repainted only
// when a property or the size changes. GUI thread; lengths in dp.
#pragma once

#include <QPainter>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

class Paper : public QQuickPaintedItem {
  Q_OBJECT
  QML_ANONYMOUS
 public:
  explicit Paper(QQuickItem* parent = nullptr);

 signals:
  void changed();
};
