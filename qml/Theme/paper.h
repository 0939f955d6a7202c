// What all painted items of the theme share: antialiased, painted once into an image, repainted
// only when a property or the size changes, and not before they are seen: Qt would paint the hidden
// ones too. Every property has a notifier of its own. GUI thread; lengths in dp.
#pragma once

#include <QPainter>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

class Paper : public QQuickPaintedItem {
  Q_OBJECT
  QML_ANONYMOUS
 public:
  explicit Paper(QQuickItem* parent = nullptr);

 protected:
  void componentComplete() override;

 protected slots:
  // Called after any settable property of a subclass or the size has changed.
  virtual void refresh();

 private:
  void shownOrHidden();

  bool stale_ = true;
};
