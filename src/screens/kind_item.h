// screens/kind_item.h: a small drawing of a defect (job::DefectKind), in ink lines. Kinds without a
// drawing of their own get the three dots of "other"; so does -1. Painted once; GUI thread.
#pragma once

#include <QColor>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

namespace jambline::screens {

class KindItem : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(int kind MEMBER kind_ NOTIFY lookChanged)
  Q_PROPERTY(QColor color MEMBER color_ NOTIFY lookChanged)
 public:
  explicit KindItem(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

 signals:
  void lookChanged();

 private:
  int kind_ = -1;
  QColor color_;
};

}  // namespace jambline::screens
