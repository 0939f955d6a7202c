// screens/fit_item.h: draws over a PatternItem what belongs to the fit of its panel: the edges that
// have a gap, the chosen one strong, and an arrow at every fastener, as long as its move.
//
// fit: the view model. originX, originY, pxPerMm: those of the PatternItem. pxPerMove: dp for a
// move of 1 mm, the same for all arrows. here, quiet, ink: colors of the chosen edge, the others
// and the arrows. Silent to the reader: the words stand beside it. GUI thread.
#pragma once

#include <QColor>
#include <QPointer>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

#include "screens/fit_view_model.h"

namespace jambline::screens {

class FitItem : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(jambline::screens::FitViewModel* fit READ fit WRITE setFit NOTIFY lookChanged)
  Q_PROPERTY(double originX MEMBER origin_x_ NOTIFY lookChanged)
  Q_PROPERTY(double originY MEMBER origin_y_ NOTIFY lookChanged)
  Q_PROPERTY(double pxPerMm MEMBER px_per_mm_ NOTIFY lookChanged)
  Q_PROPERTY(double pxPerMove MEMBER px_per_move_ NOTIFY lookChanged)
  Q_PROPERTY(double handle MEMBER handle_ NOTIFY lookChanged)  // an arrow begins so far off
  Q_PROPERTY(double margin MEMBER margin_ NOTIFY lookChanged)  // fasteners keep off the outline
  Q_PROPERTY(QColor here MEMBER here_ NOTIFY lookChanged)
  Q_PROPERTY(QColor quiet MEMBER quiet_ NOTIFY lookChanged)
  Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY lookChanged)
 public:
  explicit FitItem(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;
  FitViewModel* fit() const { return fit_; }
  void setFit(FitViewModel* fit);

 signals:
  void lookChanged();

 private:
  QPointF on_screen(trade::Point_mm at) const;
  void paint_arrow(QPainter* painter, const FitViewModel::Arrow& arrow) const;

  QPointer<FitViewModel> fit_;
  double origin_x_ = 0;
  double origin_y_ = 0;
  double px_per_mm_ = 0;
  double px_per_move_ = 14;
  double handle_ = 12;
  double margin_ = 0;
  QColor here_;
  QColor quiet_;
  QColor ink_;
};

}  // namespace jambline::screens
