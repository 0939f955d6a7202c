#include "screens/still_item.h"

#include <QPainter>

namespace jambline::screens {

void StillItem::set_image(const QImage& image) {
  if (image.cacheKey() == image_.cacheKey()) return;
  image_ = image;
  emit imageChanged();
  update();
}

void StillItem::paint(QPainter* painter) {
  if (image_.isNull()) return;
  const QSizeF fits = QSizeF(image_.size()).scaled(size(), Qt::KeepAspectRatio);
  painter->setRenderHint(QPainter::SmoothPixmapTransform);
  painter->drawImage(
      QRectF(QPointF((width() - fits.width()) / 2, (height() - fits.height()) / 2), fits), image_);
}

}  // namespace jambline::screens
