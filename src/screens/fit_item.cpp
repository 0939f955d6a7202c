#include "screens/fit_item.h"

#include <QPainter>
#include <QPainterPath>
#include <cmath>

namespace jambline::screens {

namespace {
constexpr double head_px = 9;
constexpr double least_move_mm = 0.05;
}  // namespace

FitItem::FitItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setAntialiasing(true);
  connect(this, &FitItem::lookChanged, this, [this] { update(); });
}

void FitItem::setFit(FitViewModel* fit) {
  if (fit == fit_) return;
  if (fit_) fit_->disconnect(this);
  fit_ = fit;
  if (fit_) connect(fit_, &FitViewModel::changed, this, [this] { update(); });
  emit lookChanged();
}

QPointF FitItem::on_screen(trade::Point_mm at) const {
  return {origin_x_ + at.x_mm * px_per_mm_, origin_y_ - at.y_mm * px_per_mm_};
}

void FitItem::paint_arrow(QPainter* painter, const FitViewModel::Arrow& arrow) const {
  const double move_mm = std::hypot(arrow.dx_mm, arrow.dy_mm);
  if (move_mm < least_move_mm) return;
  const QPointF along(arrow.dx_mm / move_mm, -arrow.dy_mm / move_mm);
  const QPointF across(-along.y(), along.x());
  const QPointF at = fit_->insideOf(arrow.at.x_mm, arrow.at.y_mm, margin_ / px_per_mm_);
  const QPointF from = on_screen({at.x(), at.y()}) + along * handle_;
  const double shaft_px = std::max(2.0, move_mm * px_per_move_);
  const QPointF neck = from + along * shaft_px;
  painter->setPen(QPen(ink_, 3, Qt::SolidLine, Qt::FlatCap));
  painter->drawLine(from, neck);
  painter->setPen(Qt::NoPen);
  painter->setBrush(ink_);
  painter->drawPolygon(QPolygonF{neck + across * head_px * 0.7, neck + along * head_px,
                                 neck - across * head_px * 0.7});
}

void FitItem::paint(QPainter* painter) {
  if (!fit_ || px_per_mm_ <= 0) return;
  painter->setRenderHint(QPainter::Antialiasing);
  const auto edges = fit_->drawn_edges();
  for (const bool chosen : {false, true})
    for (std::size_t i = 0; i < edges.size(); ++i) {
      if ((static_cast<int>(i) == fit_->edge()) != chosen) continue;
      QPainterPath path;
      for (std::size_t p = 0; p < edges[i].size(); ++p)
        p == 0 ? path.moveTo(on_screen(edges[i][p])) : path.lineTo(on_screen(edges[i][p]));
      painter->setBrush(Qt::NoBrush);
      painter->setPen(QPen(chosen ? here_ : quiet_, chosen ? 5 : 3, Qt::SolidLine, Qt::RoundCap));
      painter->drawPath(path);
    }
  for (const auto& arrow : fit_->arrows()) paint_arrow(painter, arrow);
}

}  // namespace jambline::screens
