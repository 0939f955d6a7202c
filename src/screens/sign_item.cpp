#include "screens/sign_item.h"

#include <QPainter>

namespace jambline::screens {

namespace {
constexpr double ring_px = 6;
constexpr double faint = 0.35;

QColor thinned(QColor color) {
  color.setAlphaF(faint);
  return color;
}
}  // namespace

SignItem::SignItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setAntialiasing(true);
  connect(this, &SignItem::lookChanged, this, [this] { update(); });
}

void SignItem::setEvidence(EvidenceViewModel* evidence) {
  if (evidence == evidence_) return;
  if (evidence_) evidence_->disconnect(this);
  evidence_ = evidence;
  if (evidence_) connect(evidence_, &EvidenceViewModel::drawingChanged, this, [this] { update(); });
  emit lookChanged();
}

QPointF SignItem::on_screen(trade::Point_mm point) const {
  return {origin_x_ + point.x_mm * px_per_mm_, origin_y_ - point.y_mm * px_per_mm_};
}

QPainterPath SignItem::path_of(const trade::Polygon& polygon) const {
  QPolygonF out;
  for (const auto& corner : polygon.corners) out << on_screen(corner);
  QPainterPath path;
  path.addPolygon(out);
  path.closeSubpath();
  return path;
}

void SignItem::paint(QPainter* painter) {
  if (!evidence_ || px_per_mm_ <= 0) return;
  const SignDrawing drawing = evidence_->drawing();
  painter->setRenderHint(QPainter::Antialiasing);
  QPen outline(line_, 1.6, Qt::CustomDashLine, Qt::FlatCap, Qt::RoundJoin);
  outline.setDashPattern({4, 3});
  for (const auto& area : drawing.areas) {
    const QPainterPath path = path_of(area);
    painter->fillPath(path, thinned(area_));
    painter->strokePath(path, outline);
  }
  for (const auto& band : drawing.bands) {
    painter->save();
    painter->setClipPath(path_of(band.within));
    QPolygonF line;
    for (const auto& point : band.line) line << on_screen(point);
    painter->setPen(QPen(thinned(area_), 2 * drawing.band_mm * px_per_mm_, Qt::SolidLine,
                         Qt::RoundCap, Qt::RoundJoin));
    painter->drawPolyline(line);
    painter->restore();
  }
  if (drawing.circle) {
    const double radius_px = drawing.circle->radius_mm * px_per_mm_;
    QPainterPath path;
    path.addEllipse(on_screen(drawing.circle->center), radius_px, radius_px);
    painter->save();
    painter->setClipPath(path_of(drawing.circle->within));
    painter->fillPath(path, thinned(area_));
    painter->restore();
    painter->strokePath(path, outline);
  }
  painter->setBrush(Qt::NoBrush);
  for (const bool speaking : {false, true})
    for (const auto& mark : drawing.marks) {
      if (mark.speaks != speaking) continue;
      const QPointF at = on_screen(mark.at);
      painter->setPen(QPen(casing_, 5));
      painter->drawEllipse(at, ring_px, ring_px);
      painter->setPen(QPen(speaking ? mark_ : quiet_, speaking ? 2.6 : 1.8));
      painter->drawEllipse(at, ring_px, ring_px);
    }
}

}  // namespace jambline::screens
