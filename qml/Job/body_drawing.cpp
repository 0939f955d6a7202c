#include "body_drawing.h"

#include <QPainter>
#include <QPolygonF>

#include "job/body_shape.h"
#include "screens/map_geometry.h"
#include "screens/panel_rows.h"

namespace {
using namespace jambline;

const job::CarPattern* pattern_of(int shape) {
  const int shapes = static_cast<int>(enum_words<job::BodyShape>.size());
  return shape < 0 || shape >= shapes ? nullptr : &job::pattern(static_cast<job::BodyShape>(shape));
}

QPolygonF drawn(const screens::MapFrame& frame, const trade::Polygon& polygon) {
  QPolygonF out;
  for (const auto& corner : polygon.corners) {
    const auto at = frame.to_px(corner);
    out.append(QPointF(at.x_px, at.y_px));
  }
  return out;
}
}  // namespace

BodyDrawing::BodyDrawing(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setAntialiasing(true);
  connect(this, &BodyDrawing::changed, this, [this] { update(); });
}

void BodyDrawing::paint(QPainter* painter) {
  const auto* pattern = pattern_of(shape_);
  if (!pattern || width() < 8 || height() < 8) return;
  const screens::MapFrame frame(pattern->bounds, width(), height(), 2);
  painter->setPen(QPen(glass_, 1));
  painter->setBrush(Qt::NoBrush);
  for (const auto& pane : pattern->glass) painter->drawPolygon(drawn(frame, pane));
  for (const auto& panel : pattern->panels) {
    const bool on = painted_.contains(screens::word_of_panel(panel.panel));
    painter->setPen(QPen(line_, on ? 2 : 1.2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter->setBrush(on ? QBrush(fill_) : QBrush(Qt::NoBrush));
    painter->drawPolygon(drawn(frame, panel.place.apply(panel.shape.outline)));
  }
}

QString BodyDrawing::panelAt(double x, double y) const {
  const auto* pattern = pattern_of(shape_);
  if (!pattern) return {};
  std::vector<trade::Polygon> outlines;
  for (const auto& panel : pattern->panels)
    outlines.push_back(panel.place.apply(panel.shape.outline));
  const screens::MapFrame frame(pattern->bounds, width(), height(), 2);
  for (std::size_t i = 0; i < outlines.size(); ++i)
    if (trade::contains(outlines[i], frame.to_mm({x, y})))
      return screens::word_of_panel(pattern->panels[i].panel);
  const auto picked = screens::pick_panel(frame, outlines, {x, y});
  return picked && !picked->rival ? screens::word_of_panel(pattern->panels[picked->index].panel)
                                  : QString();
}
