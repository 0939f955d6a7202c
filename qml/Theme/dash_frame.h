// DashFrame: a dashed rounded outline ("waits", "missing"), or a dashed line where it is only one
// stroke high or wide. color, thickness, dash, gap, radius in dp.
#pragma once

#include "paper.h"

#include <QColor>

class DashFrame : public Paper {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QColor color MEMBER color_ NOTIFY changed)
  Q_PROPERTY(double thickness MEMBER thickness_ NOTIFY changed)
  Q_PROPERTY(double dash MEMBER dash_ NOTIFY changed)
  Q_PROPERTY(double gap MEMBER gap_ NOTIFY changed)
  Q_PROPERTY(double radius MEMBER radius_ NOTIFY changed)
 public:
  using Paper::Paper;
  void paint(QPainter* painter) override;

 private:
  QColor color_;
  double thickness_ = 2.0;
  double dash_ = 8.0;
  double gap_ = 6.0;
  double radius_ = 4.0;
};
