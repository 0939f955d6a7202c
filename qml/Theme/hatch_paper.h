// HatchPaper: slanted lines (45 degrees), painted once. spacing: dp between the lines, measured
// across; thickness: dp. Decoration only, so it stays out of the accessibility tree.
#pragma once

#include <QColor>

#include "paper.h"

class HatchPaper : public Paper {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QColor color MEMBER color_ NOTIFY colorChanged)
  Q_PROPERTY(double spacing MEMBER spacing_ NOTIFY spacingChanged)
  Q_PROPERTY(double thickness MEMBER thickness_ NOTIFY thicknessChanged)
  Q_PROPERTY(double radius MEMBER radius_ NOTIFY radiusChanged)
 public:
  using Paper::Paper;
  void paint(QPainter* painter) override;

 signals:
  void colorChanged();
  void spacingChanged();
  void thicknessChanged();
  void radiusChanged();

 private:
  QColor color_;
  double spacing_ = 5.0;
  double thickness_ = 1.0;
  double radius_ = 0.0;
};
