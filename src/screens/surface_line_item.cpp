#include "screens/surface_line_item.h"

#include <QPainter>
#include <QPolygonF>

namespace jambline::screens {

namespace {
constexpr double margin = 6;
constexpr double dot_radius = 3.5;
}  // namespace

SurfaceLineItem::SurfaceLineItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
  connect(this, &SurfaceLineItem::lookChanged, this, [this] { update(); });
}

void SurfaceLineItem::paint(QPainter* painter) {
  const QRectF room = boundingRect().adjusted(margin, margin, -margin, -margin);
  const auto at = [&](double x, double y) {
    return QPointF(room.left() + x * room.width(), room.bottom() - y * room.height());
  };
  painter->setRenderHint(QPainter::Antialiasing);
  painter->setPen(QPen(edge_, 1.2));
  painter->drawLine(room.bottomLeft(), room.bottomRight());
  painter->setPen(QPen(edge_, 1.6, Qt::DashLine));
  painter->drawLine(at(0, limit_), at(1, limit_));
  QPolygonF line;
  for (qsizetype i = 0; i + 1 < points_.size(); i += 2)
    line << at(points_[i].toDouble(), points_[i + 1].toDouble());
  painter->setPen(QPen(ink_, 2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter->drawPolyline(line);
  painter->setPen(Qt::NoPen);
  painter->setBrush(ink_);
  for (const QPointF& point : line) painter->drawEllipse(point, dot_radius, dot_radius);
}

}  // namespace jambline::screens
