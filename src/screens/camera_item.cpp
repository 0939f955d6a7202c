#include "screens/camera_item.h"

#include <QPainter>
#include <QThreadPool>
#include <algorithm>
#include <array>
#include <cstdlib>

namespace jambline::screens {

namespace {
constexpr int longest_px = 480;
constexpr int dash_px = 6;
constexpr double edges_part = 0.06;  // of all pixels, the strongest
constexpr int least_gradient = 80;   // of 8 bits, 4 to a full step
constexpr double ghost_opacity = 0.4;
}  // namespace

QImage edge_dashes(const QImage& picture, const QColor& line) {
  if (picture.isNull()) return {};
  const QImage gray =
      picture.scaled(longest_px, longest_px, Qt::KeepAspectRatio, Qt::SmoothTransformation)
          .convertToFormat(QImage::Format_Grayscale8);
  const int width = gray.width();
  const int height = gray.height();
  std::vector<int> strength(static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
  std::array<int, 2041> many{};
  for (int y = 1; y + 1 < height; ++y) {
    const uchar* above = gray.constScanLine(y - 1);
    const uchar* here = gray.constScanLine(y);
    const uchar* below = gray.constScanLine(y + 1);
    for (int x = 1; x + 1 < width; ++x) {
      const int across = above[x + 1] + 2 * here[x + 1] + below[x + 1] - above[x - 1] -
                         2 * here[x - 1] - below[x - 1];
      const int down =
          below[x - 1] + 2 * below[x] + below[x + 1] - above[x - 1] - 2 * above[x] - above[x + 1];
      const int sum = std::abs(across) + std::abs(down);
      strength[static_cast<std::size_t>(y * width + x)] = sum;
      ++many[static_cast<std::size_t>(sum)];
    }
  }
  int least = static_cast<int>(many.size()) - 1;
  for (double left = edges_part * width * height; least > least_gradient; --least) {
    left -= many[static_cast<std::size_t>(least)];
    if (left < 0) break;
  }
  QImage out(width, height, QImage::Format_ARGB32_Premultiplied);
  out.fill(Qt::transparent);
  const QRgb ink = line.rgba();
  for (int y = 1; y + 1 < height; ++y) {
    auto* row = reinterpret_cast<QRgb*>(out.scanLine(y));
    for (int x = 1; x + 1 < width; ++x)
      if (strength[static_cast<std::size_t>(y * width + x)] >= least &&
          ((x + y) / dash_px) % 2 == 0)
        row[x] = ink;
  }
  return out;
}

CameraItem::CameraItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
  connect(this, &CameraItem::lookChanged, this, [this] { update(); });
  connect(this, &CameraItem::dashesChanged, this, [this] { update(); });
}

void CameraItem::set_camera(device::Camera* camera) {
  if (camera == camera_) return;
  if (camera_) camera_->disconnect(this);
  camera_ = camera;
  if (camera)
    connect(camera, &device::Camera::frameArrived, this, [this] {
      if (isVisible()) update();
    });
  emit lookChanged();
}

void CameraItem::set_ghost(const QImage& ghost) {
  if (ghost.cacheKey() == ghost_.cacheKey()) return;
  ghost_ = ghost;
  dashes_ = {};
  emit lookChanged();
  if (ghost.isNull()) return;
  QThreadPool::globalInstance()->start(
      [ghost, line = line_, item = QPointer(this), app = QCoreApplication::instance()] {
        QMetaObject::invokeMethod(
            app,
            [item, key = ghost.cacheKey(), dashes = edge_dashes(ghost, line)] {
              if (!item || item->ghost_.cacheKey() != key) return;
              item->dashes_ = dashes;
              emit item->dashesChanged();
            },
            Qt::QueuedConnection);
      });
}

QRectF CameraItem::place_of(const QSize& picture) const {
  const QSizeF fits =
      QSizeF(picture).scaled(size(), whole_ ? Qt::KeepAspectRatio : Qt::KeepAspectRatioByExpanding);
  return {QPointF((width() - fits.width()) / 2, (height() - fits.height()) / 2), fits};
}

void CameraItem::paint(QPainter* painter) {
  painter->setClipRect(boundingRect());
  painter->setRenderHint(QPainter::SmoothPixmapTransform);
  const QImage frame = camera_ ? camera_->latest_frame() : QImage();
  if (!frame.isNull()) painter->drawImage(place_of(frame.size()), frame);
  if (!dashes_.isNull()) {
    painter->setOpacity(ghost_opacity);
    painter->drawImage(place_of(dashes_.size()), dashes_);
    painter->setOpacity(1);
  }
  if (!guide_) return;
  const double wide = std::min(width() * 0.86, height() * 2.4);
  const QRectF box((width() - wide) / 2, (height() - wide * 0.34) / 2, wide, wide * 0.34);
  painter->setRenderHint(QPainter::Antialiasing);
  painter->setPen(QPen(line_, 3));
  painter->drawRoundedRect(box, 4, 4);
}

}  // namespace jambline::screens
