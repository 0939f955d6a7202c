// screens/area_item.h: draws the areas of a round over a PatternItem, to scale. areas: what to
// draw; originX, originY, pxPerMm: those of the PatternItem. fill, line: colors of this round; the
// next round's areas are dashed outlines. Silent to the reader: the words stand beside it. GUI
// thread.
#pragma once

#include <QColor>
#include <QPainterPath>
#include <QPointer>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

#include "screens/round_areas.h"

namespace jambline::screens {

class AreaItem : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(jambline::screens::RoundAreas* areas READ areas WRITE setAreas NOTIFY lookChanged)
  Q_PROPERTY(double originX MEMBER origin_x_ NOTIFY lookChanged)
  Q_PROPERTY(double originY MEMBER origin_y_ NOTIFY lookChanged)
  Q_PROPERTY(double pxPerMm MEMBER px_per_mm_ NOTIFY lookChanged)
  Q_PROPERTY(QColor fill MEMBER fill_ NOTIFY lookChanged)
  Q_PROPERTY(QColor line MEMBER line_ NOTIFY lookChanged)
 public:
  explicit AreaItem(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;
  RoundAreas* areas() const { return areas_; }
  void setAreas(RoundAreas* areas);

 signals:
  void lookChanged();

 private:
  QPainterPath path_of(const RoundArea& area) const;

  QPointer<RoundAreas> areas_;
  double origin_x_ = 0;
  double origin_y_ = 0;
  double px_per_mm_ = 0;
  QColor fill_;
  QColor line_;
};

}  // namespace jambline::screens
