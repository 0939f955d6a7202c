// screens/pencil_item.h: a ring drawn with a grease pencil, on a casing so that it holds on any
// color. key seeds the wobble: the same mark looks the same on every machine. drawn: 0 to 1, how
// far the hand has come. struck: a line through it. Painted once; GUI thread.
#pragma once

#include <QColor>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

namespace jambline::screens {

class PencilItem : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QString key MEMBER key_ NOTIFY lookChanged)
  Q_PROPERTY(QColor color MEMBER color_ NOTIFY lookChanged)
  Q_PROPERTY(QColor casing MEMBER casing_ NOTIFY lookChanged)
  Q_PROPERTY(double drawn MEMBER drawn_ NOTIFY lookChanged)
  Q_PROPERTY(bool struck MEMBER struck_ NOTIFY lookChanged)
  Q_PROPERTY(bool filled MEMBER filled_ NOTIFY lookChanged)  // casing also inside: holds a count
 public:
  explicit PencilItem(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

 signals:
  void lookChanged();

 private:
  QString key_;
  QColor color_;
  QColor casing_;
  double drawn_ = 1;
  bool struck_ = false;
  bool filled_ = false;
};

}  // namespace jambline::screens
