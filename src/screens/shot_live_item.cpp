#include "screens/shot_live_item.h"

#include <QPainter>

namespace jambline::screens {

void ShotLiveItem::set_shot(ShotViewModel* shot) {
  if (shot == shot_) return;
  if (shot_) shot_->disconnect(this);
  shot_ = shot;
  set_camera(shot ? shot->camera() : nullptr);
  set_ghost(shot ? shot->ghost() : QImage());
  if (shot)
    connect(shot, &ShotViewModel::ghostChanged, this, [this] { set_ghost(shot_->ghost()); });
  emit shotChanged();
}

void ShotStillItem::set_shot(ShotViewModel* shot) {
  if (shot == shot_) return;
  if (shot_) shot_->disconnect(this);
  shot_ = shot;
  if (shot)
    connect(shot, &ShotViewModel::changed, this, [this] {
      if (shot_->preview().cacheKey() != painted_) update();
    });
  emit shotChanged();
  update();
}

void ShotStillItem::paint(QPainter* painter) {
  const QImage image = shot_ ? shot_->preview() : QImage();
  painted_ = image.cacheKey();
  if (image.isNull()) return;
  const QSizeF fits = QSizeF(image.size()).scaled(size(), Qt::KeepAspectRatio);
  painter->setRenderHint(QPainter::SmoothPixmapTransform);
  painter->drawImage(
      QRectF(QPointF((width() - fits.width()) / 2, (height() - fits.height()) / 2), fits), image);
}

}  // namespace jambline::screens
