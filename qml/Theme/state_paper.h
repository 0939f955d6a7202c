// StatePaper: draws one ShapeKind into its square. color: the shape; ground: what shows through
// inside (tick, mark, empty half); key seeds the wobble of a ring.
#pragma once

#include <QColor>

#include "paper.h"
#include "shape_kind.h"

class StatePaper : public Paper {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(int kind MEMBER kind_ NOTIFY kindChanged)
  Q_PROPERTY(QColor color MEMBER color_ NOTIFY colorChanged)
  Q_PROPERTY(QColor ground MEMBER ground_ NOTIFY groundChanged)
  Q_PROPERTY(QString key MEMBER key_ NOTIFY keyChanged)
 public:
  using Paper::Paper;
  void paint(QPainter* painter) override;

 signals:
  void kindChanged();
  void colorChanged();
  void groundChanged();
  void keyChanged();

 private:
  void paintRing(QPainter* painter, double size) const;
  void paintUnseen(QPainter* painter, double size) const;

  int kind_ = 0;
  QColor color_;
  QColor ground_;
  QString key_;
};
