#include "body_drawing.h"

#include <QPainter>
#include <QPolygonF>
#include <algorithm>

#include "job/body_shape.h"

namespace {
using namespace jambline;

const job::CarPattern* pattern_of(int shape) {
  const int shapes = static_cast<int>(enum_words<job::BodyShape>.size());
  return shape < 0 || shape >= shapes ? nullptr : &job::pattern(static_cast<job::BodyShape>(shape));
}

QPolygonF drawn(const trade::Polygon& polygon) {
  QPolygonF out;
  for (const auto& corner : polygon.corners) out.append(QPointF(corner.x_mm, corner.y_mm));
  return out;
}

QString word(job::Panel panel) {
  const auto text = word_of(panel);
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}
}  // namespace

BodyDrawing::BodyDrawing(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setAntialiasing(true);
  connect(this, &BodyDrawing::changed, this, [this] { update(); });
}

QTransform BodyDrawing::to_screen() const {
  const auto* pattern = pattern_of(shape_);
  const auto& box = pattern->bounds;
  const double scale = std::min((width() - 4) / box.width_mm(), (height() - 4) / box.height_mm());
  QTransform to;
  to.translate(width() / 2, height() / 2);
  to.scale(scale, -scale);
  to.translate(-(box.low.x_mm + box.high.x_mm) / 2, -(box.low.y_mm + box.high.y_mm) / 2);
  return to;
}

void BodyDrawing::paint(QPainter* painter) {
  const auto* pattern = pattern_of(shape_);
  if (!pattern || width() < 8 || height() < 8) return;
  const QTransform to = to_screen();
  painter->setPen(QPen(glass_, 1));
  painter->setBrush(Qt::NoBrush);
  for (const auto& pane : pattern->glass) painter->drawPolygon(to.map(drawn(pane)));
  for (const auto& panel : pattern->panels) {
    const bool on = painted_.contains(word(panel.panel));
    painter->setPen(QPen(line_, on ? 2 : 1.2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter->setBrush(on ? QBrush(fill_) : QBrush(Qt::NoBrush));
    painter->drawPolygon(to.map(drawn(panel.place.apply(panel.shape.outline))));
  }
}

QString BodyDrawing::panelAt(double x, double y) const {
  const auto* pattern = pattern_of(shape_);
  if (!pattern) return {};
  const QPointF at = to_screen().inverted().map(QPointF(x, y));
  for (const auto& panel : pattern->panels)
    if (trade::contains(panel.place.apply(panel.shape.outline), {at.x(), at.y()}))
      return word(panel.panel);
  return {};
}
