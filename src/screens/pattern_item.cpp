#include "screens/pattern_item.h"

#include <QPainterPath>
#include <algorithm>
#include <cmath>

namespace jambline::screens {

using trade::Box_mm;
using trade::Point_mm;
using trade::Polygon;

namespace {

QPen pen(const QColor& color, double width, Qt::PenCapStyle cap = Qt::RoundCap) {
  return {color, width, Qt::SolidLine, cap, Qt::RoundJoin};
}

QPen dashed(const QColor& color, double width, double dash_px, double gap_px) {
  QPen out(color, width, Qt::CustomDashLine, Qt::FlatCap, Qt::RoundJoin);
  out.setDashPattern({dash_px / width, gap_px / width});
  return out;
}

}  // namespace

PatternItem::PatternItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setAntialiasing(true);
  setOpaquePainting(false);
  connect(this, &PatternItem::lookChanged, this, [this] { update(); });
  connect(this, &PatternItem::viewChanged, this, [this] { update(); });
}

void PatternItem::setInspect(InspectViewModel* inspect) {
  if (inspect == inspect_) return;
  if (inspect_) inspect_->disconnect(this);
  inspect_ = inspect;
  if (inspect_) connect(inspect_, &InspectViewModel::changed, this, &PatternItem::gather);
  emit inspectChanged();
  gather();
}

void PatternItem::setPanel(const QString& panel) {
  if (panel == panel_) return;
  panel_ = panel;
  emit panelChanged();
  gather();
}

void PatternItem::setPast(bool past) {
  if (past == past_) return;
  past_ = past;
  emit pastChanged();
  gather();
}

void PatternItem::setThen(const QVariantMap& then) {
  if (then == then_) return;
  then_ = then;
  emit pastChanged();
  gather();
}

void PatternItem::setInset(double inset_px) {
  if (inset_px == inset_px_) return;
  inset_px_ = inset_px;
  emit insetChanged();
  frame_anew();
}

void PatternItem::geometryChange(const QRectF& now, const QRectF& before) {
  QQuickPaintedItem::geometryChange(now, before);
  if (now.size() == before.size()) return;
  if (before.isEmpty())
    frame_anew();
  else
    set_frame(frame_.resized(width(), height()));
}

void PatternItem::frame_anew() {
  set_frame(MapFrame(content_, width(), height(), inset_px_));
}

void PatternItem::set_frame(const MapFrame& frame) {
  frame_ = frame;
  emit viewChanged();
}

void PatternItem::gather() {
  const job::CarPattern* pattern = inspect_ ? inspect_->pattern() : nullptr;
  const auto one = panel_of_word(panel_);
  std::vector<Look> looks;
  if (pattern)
    for (const job::PatternPanel& part : pattern->panels) {
      if (!panel_.isEmpty() && part.panel != one) continue;
      const QString word = word_of_panel(part.panel);
      Look look{part.panel};
      if (past_) {
        look.planned = then_.contains(word);
        look.seen = then_.value(word).toBool() || !look.planned;
      } else if (const PanelRow* row = inspect_->panels()->row(word)) {
        look.planned = true;
        look.seen = row->look != PanelLook::Value::NotYet;
      }
      looks.push_back(look);
    }
  const bool alone = !panel_.isEmpty();
  if (pattern == pattern_ && alone == alone_ && looks == looks_) return;
  pattern_ = pattern;
  alone_ = alone;
  looks_ = std::move(looks);
  draw_anew();
}

void PatternItem::draw_anew() {
  std::vector<Drawn> drawn;
  std::vector<Polygon> glass;
  Box_mm content;
  for (const Look& look : looks_) {
    const job::PatternPanel& part = *pattern_->find(look.panel);
    const trade::Placement place = alone_ ? upright(part) : part.place;
    Drawn out;
    out.planned = look.planned;
    out.seen = look.seen;
    out.panel = part.panel;
    out.outline = place.apply(part.shape.outline);
    for (const auto& edge : part.shape.masked_edges) out.masked.push_back(place.apply(edge.line));
    for (const auto& line : part.shape.body_lines) out.body_lines.push_back(place.apply(line));
    for (const auto& pane : part.shape.glass) out.glass.push_back(place.apply(pane));
    drawn.push_back(std::move(out));
  }
  if (pattern_) {
    if (!alone_) {
      glass = pattern_->glass;
      content = pattern_->bounds;
    } else if (!drawn.empty()) {
      content = trade::bounds(drawn.front().outline.corners);
      for (const Polygon& pane : drawn.front().glass)
        content = trade::joined(content, trade::bounds(pane.corners));
    }
  }
  const bool moved = content != content_;
  drawn_ = std::move(drawn);
  glass_ = std::move(glass);
  const bool has_glass = alone_ && !drawn_.empty() && !drawn_.front().glass.empty();
  glass_spot_ = has_glass ? label_spot(drawn_.front().glass.front(), {}) : LabelSpot{};
  content_ = content;
  if (moved) {
    emit contentChanged();
    frame_anew();
  } else {
    update();
  }
}

double PatternItem::aspect() const {
  return content_.height_mm() > 0 ? content_.width_mm() / content_.height_mm() : 1;
}

QRectF PatternItem::contentPx() const {
  const Point_px upper_left = frame_.to_px({content_.low.x_mm, content_.high.y_mm});
  return {upper_left.x_px, upper_left.y_px, content_.width_mm() * frame_.px_per_mm(),
          content_.height_mm() * frame_.px_per_mm()};
}

QPointF PatternItem::glassSpot() const {
  if (glass_spot_.width_mm * frame_.px_per_mm() < 60) return {};
  const Point_px at = frame_.to_px(glass_spot_.middle);
  return {at.x_px, at.y_px};
}

QPointF PatternItem::toMm(double x_px, double y_px) const {
  const Point_mm point = frame_.to_mm({x_px, y_px});
  return {point.x_mm, point.y_mm};
}

void PatternItem::zoomBy(double factor, double x_px, double y_px) {
  set_frame(frame_.zoomed(factor, {x_px, y_px}));
}

void PatternItem::moveBy(double dx_px, double dy_px) {
  set_frame(frame_.moved(dx_px, dy_px));
}

void PatternItem::fit() {
  set_frame(frame_.fitted());
}

void PatternItem::showPart(double x_mm, double y_mm, double width_mm, double height_mm) {
  const double air_mm = std::max({40.0, width_mm * 0.3, height_mm * 0.3});
  set_frame(frame_.shown(
      {{x_mm - air_mm, y_mm - air_mm}, {x_mm + width_mm + air_mm, y_mm + height_mm + air_mm}}));
}

QString PatternItem::pick(double x_px, double y_px) {
  std::vector<Polygon> outlines;
  std::vector<job::Panel> names;
  for (const Drawn& one : drawn_)
    if (one.planned) {
      outlines.push_back(one.outline);
      names.push_back(one.panel);
    }
  const auto picked = pick_panel(frame_, outlines, {x_px, y_px});
  if (!picked) return {};
  if (picked->rival && frame_.zoom() < most_zoom / 4) {
    set_frame(frame_.zoomed(2.5, {x_px, y_px}));
    return {};
  }
  return word_of_panel(names[picked->index]);
}

QPolygonF PatternItem::on_screen(const std::vector<Point_mm>& points) const {
  QPolygonF out;
  out.reserve(static_cast<qsizetype>(points.size()));
  for (const Point_mm& point : points) {
    const Point_px at = frame_.to_px(point);
    out << QPointF(at.x_px, at.y_px);
  }
  return out;
}

void PatternItem::paint_panel(QPainter* painter, const Drawn& drawn) const {
  const bool large = !panel_.isEmpty();
  const QPolygonF outline = on_screen(drawn.outline.corners);
  const QRectF box = outline.boundingRect();
  if (!box.intersects(boundingRect())) return;
  QPainterPath path;
  path.addPolygon(outline);
  path.closeSubpath();

  if (drawn.planned) painter->fillPath(path, drawn.seen || large || small_ ? tint_ : ground_);
  if (drawn.planned && !drawn.seen && !large && !small_) {
    painter->save();
    painter->setClipPath(path);
    painter->setPen(pen(edge_, 1, Qt::FlatCap));
    const QRectF part = box.intersected(boundingRect());
    const double step = 7;
    const double first = std::floor((part.left() + part.top()) / step) * step;
    for (double sum = first; sum < part.right() + part.bottom() + step; sum += step)
      painter->drawLine(QPointF(sum - part.top(), part.top()),
                        QPointF(sum - part.bottom(), part.bottom()));
    painter->restore();
  }
  if (!small_) {
    painter->save();
    painter->setClipPath(path);
    painter->setBrush(Qt::NoBrush);
    painter->setPen(drawn.planned ? dashed(crease_, large ? 1.4 : 1, large ? 7 : 5, large ? 5 : 4)
                                  : dashed(quiet_, 1, 3, 4));
    for (const auto& line : drawn.body_lines) painter->drawPolyline(on_screen(line));
    painter->restore();
  }
  const double line = small_ ? 1 : large ? 1.8 : 1.5;
  painter->setBrush(Qt::NoBrush);
  painter->setPen(drawn.planned ? pen(outline_, line) : dashed(quiet_, 1.2, 4, 3));
  painter->drawPath(path);
  if (!small_ && drawn.planned) {
    painter->setPen(pen(masked_, large ? 9 : 4, Qt::FlatCap));
    for (const auto& edge : drawn.masked) painter->drawPolyline(on_screen(edge));
  }
  if (!small_)
    for (const Polygon& pane : drawn.glass) {
      painter->setPen(dashed(drawn.planned ? edge_ : quiet_, large ? 1.4 : 1, 4, 3));
      painter->setBrush(large ? QBrush(ground_) : QBrush(Qt::NoBrush));
      painter->drawPolygon(on_screen(pane.corners));
    }
}

void PatternItem::paint(QPainter* painter) {
  painter->setRenderHint(QPainter::Antialiasing);
  painter->setClipRect(boundingRect());
  if (!small_) {
    painter->setPen(dashed(edge_, 1, 4, 3));
    painter->setBrush(Qt::NoBrush);
    for (const Polygon& pane : glass_) painter->drawPolygon(on_screen(pane.corners));
  }
  const Drawn* here = nullptr;
  for (const Drawn& one : drawn_) {
    paint_panel(painter, one);
    if (!chosen_.isEmpty() && word_of_panel(one.panel) == chosen_) here = &one;
  }
  if (here) {
    const QPolygonF outline = on_screen(here->outline.corners);
    painter->setPen(pen(here_, small_ ? 1.5 : 3));
    painter->setBrush(small_ ? QBrush(here_) : QBrush(Qt::NoBrush));
    painter->drawPolygon(outline);
  }
}

}  // namespace jambline::screens
