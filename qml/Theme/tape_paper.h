// TapePaper: a strip of buff tape with torn ends and crepe lines.
// key: the words that seed the tear (an id; the same key tears the same way at any width).
// tornLeft, tornRight: which ends are torn; a torn end eats up to 6 dp of the width.
// color, crepe: fill, and the line color drawn at 6 %.
// outline(): the polygon as drawn, for tests and for clipping.
#pragma once

#include <QColor>
#include <QList>
#include <QPointF>

#include "paper.h"

class TapePaper : public Paper {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QString key MEMBER key_ NOTIFY keyChanged)
  Q_PROPERTY(bool tornLeft MEMBER torn_left_ NOTIFY tornLeftChanged)
  Q_PROPERTY(bool tornRight MEMBER torn_right_ NOTIFY tornRightChanged)
  Q_PROPERTY(QColor color MEMBER color_ NOTIFY colorChanged)
  Q_PROPERTY(QColor crepe MEMBER crepe_ NOTIFY crepeChanged)
 public:
  using Paper::Paper;
  void paint(QPainter* painter) override;
  Q_INVOKABLE QList<QPointF> outline() const;

 signals:
  void keyChanged();
  void tornLeftChanged();
  void tornRightChanged();
  void colorChanged();
  void crepeChanged();

 private:
  QString key_;
  bool torn_left_ = true;
  bool torn_right_ = true;
  QColor color_;
  QColor crepe_;
};
