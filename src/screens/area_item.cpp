#include "screens/area_item.h"

#include <QPainter>

namespace jambline::screens {

namespace {
constexpr double least_radius_px = 3;
}

AreaItem::AreaItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setAntialiasing(true);
  connect(this, &AreaItem::lookChanged, this, [this] { update(); });
}

void AreaItem::setAreas(RoundAreas* areas) {
  if (areas == areas_) return;
  if (areas_) areas_->disconnect(this);
  areas_ = areas;
  if (areas_) connect(areas_, &RoundAreas::changed, this, [this] { update(); });
  emit lookChanged();
}

QPainterPath AreaItem::path_of(const RoundArea& area) const {
  const auto on_screen = [&](trade::Point_mm at) {
    return QPointF(origin_x_ + at.x_mm * px_per_mm_, origin_y_ - at.y_mm * px_per_mm_);
  };
  const auto along = [&](const std::vector<trade::Point_mm>& points) {
    QPainterPath path;
    for (std::size_t i = 0; i < points.size(); ++i)
      i == 0 ? path.moveTo(on_screen(points[i])) : path.lineTo(on_screen(points[i]));
    return path;
  };
  QPainterPath outline = along(area.outline);
  outline.closeSubpath();
  if (area.whole) return outline;
  QPainterPath machine;
  QPainterPath hand;
  machine.setFillRule(Qt::WindingFill);
  hand.setFillRule(Qt::WindingFill);
  for (const auto& spot : area.spots) {
    const double radius = std::max(least_radius_px, spot.radius_mm * px_per_mm_);
    (spot.by_hand ? hand : machine).addEllipse(on_screen(spot.at), radius, radius);
  }
  QPainterPathStroker kept_off;
  kept_off.setWidth(2 * area.keep_off_mm * px_per_mm_);
  machine = machine.simplified().intersected(outline);
  if (kept_off.width() > 0.5) {
    machine = machine.subtracted(kept_off.createStroke(outline));
    for (const auto& line : area.body_lines)
      machine = machine.subtracted(kept_off.createStroke(along(line)));
  }
  return machine.united(hand.simplified().intersected(outline));
}

void AreaItem::paint(QPainter* painter) {
  if (!areas_ || px_per_mm_ <= 0) return;
  painter->setRenderHint(QPainter::Antialiasing);
  QPen next(line_, 1.5, Qt::CustomDashLine, Qt::FlatCap);
  next.setDashPattern({4, 3});
  for (const auto& area : areas_->next()) {
    painter->setPen(next);
    painter->setBrush(Qt::NoBrush);
    painter->drawPath(path_of(area));
  }
  QColor fill = fill_;
  fill.setAlphaF(0.1F);
  for (const auto& area : areas_->now()) {
    painter->setPen(QPen(line_, 2));
    painter->setBrush(fill);
    painter->drawPath(path_of(area));
  }
}

}  // namespace jambline::screens
