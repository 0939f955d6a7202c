// screens/surface_line_item.h: the surface temperatures of a cure clock as a line from the last
// coat (left) until now (right), with a dot a reading and a dashed line where it is too hot to
// touch.
//
// points: x, y, x, y from 0 to 1, y up; limit: from 0 to 1. Painted on the GUI thread.
#pragma once

#include <QColor>
#include <QQuickPaintedItem>
#include <QVariantList>
#include <QtQml/qqmlregistration.h>

namespace jambline::screens {

class SurfaceLineItem : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QVariantList points MEMBER points_ NOTIFY lookChanged)
  Q_PROPERTY(double limit MEMBER limit_ NOTIFY lookChanged)
  Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY lookChanged)
  Q_PROPERTY(QColor edge MEMBER edge_ NOTIFY lookChanged)

 public:
  explicit SurfaceLineItem(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

 signals:
  void lookChanged();

 private:
  QVariantList points_;
  double limit_ = 0;
  QColor ink_;
  QColor edge_;
};

}  // namespace jambline::screens
