// IconPaper: one drawing of icons/ (24 dp grid, 2 dp stroke) in one color. source: file name
// without ending; an unknown name warns once and draws nothing.
#pragma once

#include <QColor>

#include "paper.h"

class IconPaper : public Paper {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QString source MEMBER source_ NOTIFY sourceChanged)
  Q_PROPERTY(QColor color MEMBER color_ NOTIFY colorChanged)
 public:
  using Paper::Paper;
  void paint(QPainter* painter) override;

 signals:
  void sourceChanged();
  void colorChanged();

 private:
  QString source_;
  QColor color_;
};
