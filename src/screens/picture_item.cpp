#include "screens/picture_item.h"

#include <QPainter>
#include <QQuickWindow>
#include <cmath>

namespace jambline::screens {

namespace {
constexpr int sides_px[] = {160, 320, 1280};
constexpr double hatch_step = 7;

int side_for(double wanted_px) {
  for (const int side : sides_px)
    if (wanted_px <= side) return side;
  return sides_px[2];
}
}  // namespace

PictureItem::PictureItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
  connect(this, &PictureItem::lookChanged, this, [this] { update(); });
}

PictureItem::~PictureItem() {
  if (store_) store_->drop(this);
}

void PictureItem::set_store(PictureStore* store) {
  if (store == store_) return;
  if (store_) {
    store_->drop(this);
    disconnect(store_, nullptr, this, nullptr);
  }
  store_ = store;
  if (store_)
    connect(store_, &PictureStore::came, this, [this](const Hash& file) {
      if (file != hash_) return;
      if (waits_ || !here()) ask();
      came_in();
    });
  ask();
  emit askChanged();
}

void PictureItem::set_file(const QString& file) {
  if (file == file_) return;
  file_ = file;
  const auto parsed = Hash::parse(file.toStdString());
  hash_ = parsed ? *parsed : Hash{};
  got_ = {};
  ask();
  emit askChanged();
  emit stateChanged();
}

QString PictureItem::trouble() const {
  switch (got_.state) {
    case PictureStore::State::NotHere: {
      const QString device = store_ ? store_->device_of(hash_) : QString();
      return device.isEmpty() ? tr("on another device, not yet here")
                              : tr("on %1, not yet here").arg(device);
    }
    case PictureStore::State::Damaged:
      return tr("damaged");
    case PictureStore::State::Unreadable:
      return tr("cannot be shown");
    default:
      return {};
  }
}

qreal PictureItem::px_per_dp() const {
  return window() ? window()->effectiveDevicePixelRatio() : 1;
}

// What fills its place is larger than it: a picture of 4:3 in a square by a third.
void PictureItem::ask() {
  if (!store_) return;
  if (!hash_ || !isVisible() || width() < 1 || height() < 1) return store_->drop(this);
  const double side = std::max(width(), height()) * px_per_dp() * (whole_ ? 1 : 1.2);
  take(store_->get({hash_, side_for(side), {0, 0, 1, 1}, checked_}, this));
}

void PictureItem::take(PictureStore::Got got) {
  waits_ = got.state == PictureStore::State::Waiting;
  if (waits_ && !got_.image.isNull()) return;  // the smaller one stays until
  const bool other = got.state != got_.state || got.image.isNull() != got_.image.isNull();
  got_ = std::move(got);
  update();
  if (other) emit stateChanged();
}

void PictureItem::itemChange(ItemChange change, const ItemChangeData& data) {
  if (change == ItemVisibleHasChanged || change == ItemSceneChange) ask();
  QQuickPaintedItem::itemChange(change, data);
}

void PictureItem::geometryChange(const QRectF& now, const QRectF& before) {
  QQuickPaintedItem::geometryChange(now, before);
  if (now.size() != before.size()) {
    ask();
    update();
  }
}

QRectF PictureItem::place() const {
  const QRectF all(0, 0, width(), height());
  if (got_.image.isNull() || all.isEmpty()) return all;
  const QSizeF size =
      QSizeF(got_.image.size())
          .scaled(all.size(), whole_ ? Qt::KeepAspectRatio : Qt::KeepAspectRatioByExpanding);
  return {QPointF((all.width() - size.width()) / 2, (all.height() - size.height()) / 2), size};
}

void PictureItem::paint(QPainter* painter) {
  const QRectF all(0, 0, width(), height());
  const QRectF where = place();
  if (!got_.image.isNull()) {
    painter->setRenderHint(QPainter::SmoothPixmapTransform);
    const QRectF shown = where.intersected(all);
    const double x = got_.image.width() / where.width();
    const double y = got_.image.height() / where.height();
    painter->drawImage(shown, got_.image,
                       QRectF((shown.x() - where.x()) * x, (shown.y() - where.y()) * y,
                              shown.width() * x, shown.height() * y));
  } else {
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setClipRect(where.intersected(all));
    painter->fillRect(where, ground_);
    painter->setPen(QPen(hatch_, 1));
    for (double x = hatch_step / 2; x < where.width() + where.height(); x += hatch_step)
      painter->drawLine(where.topLeft() + QPointF(x, 0),
                        where.topLeft() + QPointF(x - where.height(), where.height()));
    painter->setClipping(false);
  }
  paint_over(painter);
}

}  // namespace jambline::screens
