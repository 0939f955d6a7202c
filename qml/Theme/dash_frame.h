// DashFrame: a dashed rounded outline ("waits", "missing"), or a dashed line where it is only one
// stroke high or wide. color, thickness, dash, gap, radius in dp.
#pragma once

#include <QColor>

#include "paper.h"

class DashFrame : public Paper {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QColor color MEMBER color_ NOTIFY colorChanged)
  Q_PROPERTY(double thickness MEMBER thickness_ NOTIFY thicknessChanged)
  Q_PROPERTY(double dash MEMBER dash_ NOTIFY dashChanged)
  Q_PROPERTY(double gap MEMBER gap_ NOTIFY gapChanged)
  Q_PROPERTY(double radius MEMBER radius_ NOTIFY radiusChanged)
 public:
  using Paper::Paper;
  void paint(QPainter* painter) override;

 signals:
  void colorChanged();
  void thicknessChanged();
  void dashChanged();
  void gapChanged();
  void radiusChanged();

 private:
  QColor color_;
  double thickness_ = 2.0;
  double dash_ = 8.0;
  double gap_ = 6.0;
  double radius_ = 4.0;
};
