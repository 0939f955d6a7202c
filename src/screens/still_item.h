// screens/still_item.h: a picture that is not in the record yet, drawn whole in the middle of its
// place.
//
// Threads: GUI; painting as QQuickPaintedItem.
#pragma once

#include <QImage>
#include <QQuickPaintedItem>
#include <qqmlregistration.h>

namespace jambline::screens {

class StillItem : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QImage image READ image WRITE set_image NOTIFY imageChanged)

 public:
  explicit StillItem(QQuickItem* parent = nullptr) : QQuickPaintedItem(parent) {}
  void paint(QPainter* painter) override;
  QImage image() const { return image_; }
  void set_image(const QImage& image);

 signals:
  void imageChanged();

 private:
  QImage image_;
};

}  // namespace jambline::screens
