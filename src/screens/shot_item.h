// screens/shot_item.h: where to stand for a picture, as a small pencil drawing: the car or the part
// in thin lines, what is looked at, and the eye that looks.
//
// Shape:   `view` is a job::ShotView. Square: drawn in the middle of the item, as large as fits.
// Threads: GUI; painting as QQuickPaintedItem.
#pragma once

#include <QColor>
#include <QQuickPaintedItem>
#include <qqmlregistration.h>

#include "job/shot.h"

namespace jambline::screens {

// On a square of 100 by 100 units. Contract as above.
void draw_shot(QPainter& painter, job::ShotView view, const QColor& line, const QColor& eye);

class ShotItem : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(int view MEMBER view_ NOTIFY lookChanged)
  Q_PROPERTY(QColor line MEMBER line_ NOTIFY lookChanged)
  Q_PROPERTY(QColor eye MEMBER eye_ NOTIFY lookChanged)

 public:
  explicit ShotItem(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

 signals:
  void lookChanged();

 private:
  int view_ = 0;
  QColor line_;
  QColor eye_;
};

}  // namespace jambline::screens
