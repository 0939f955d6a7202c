#include "screens/signature_item.h"

#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

namespace jambline::screens {

namespace {
constexpr double least_step_px = 1.5;
constexpr std::size_t most_points = 4900;
constexpr std::size_t least_points = 2;
constexpr double signature_line_px = 2.6;
}  // namespace

QVariantList strokes_shown(const std::vector<job::Stroke>& strokes) {
  QVariantList out;
  for (const auto& stroke : strokes) {
    QVariantList points;
    for (const auto& point : stroke.points) points.append(QPointF(point.x, point.y));
    out.append(QVariant(points));
  }
  return out;
}

std::vector<job::Stroke> strokes_drawn(const QVariantList& strokes) {
  std::vector<job::Stroke> out;
  for (const QVariant& stroke : strokes) {
    job::Stroke& one = out.emplace_back();
    for (const QVariant& point : stroke.toList())
      one.points.push_back({point.toPointF().x(), point.toPointF().y()});
  }
  return out;
}

SignatureItem::SignatureItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setAntialiasing(true);
  setAcceptedMouseButtons(Qt::LeftButton);
  connect(this, &SignatureItem::inkChanged, this, [this] { update(); });
}

void SignatureItem::set_strokes(const QVariantList& strokes) {
  auto drawn = strokes_drawn(strokes);
  if (drawn == strokes_) return;
  strokes_ = std::move(drawn);
  points_ = 0;
  for (const auto& stroke : strokes_) points_ += stroke.points.size();
  update();
  emit strokesChanged();
}

bool SignatureItem::drawn() const {
  return points_ >= least_points;
}

void SignatureItem::set_open(bool open) {
  if (open == open_) return;
  open_ = open;
  setAcceptedMouseButtons(open ? Qt::LeftButton : Qt::NoButton);
  emit openChanged();
}

void SignatureItem::clear() {
  if (strokes_.empty()) return;
  strokes_.clear();
  points_ = 0;
  update();
  emit strokesChanged();
}

void SignatureItem::add(const QPointF& at) {
  if (strokes_.empty() || points_ >= most_points || width() <= 0) return;
  const job::StrokePoint point{
      std::clamp(at.x() / width(), 0.0, 1.0),
      std::clamp(at.y() / width(), 0.0, std::min(1.0, height() / width()))};
  auto& points = strokes_.back().points;
  if (!points.empty() &&
      std::hypot(point.x - points.back().x, point.y - points.back().y) * width() < least_step_px)
    return;
  points.push_back(point);
  if (++points_ == least_points) emit strokesChanged();
  update();
}

void SignatureItem::mousePressEvent(QMouseEvent* event) {
  setKeepMouseGrab(true);  // what lies below scrolls otherwise
  emit touched();
  strokes_.emplace_back();
  add(event->position());
  event->accept();
}

void SignatureItem::mouseMoveEvent(QMouseEvent* event) {
  add(event->position());
}

void SignatureItem::mouseReleaseEvent(QMouseEvent* event) {
  add(event->position());
  setKeepMouseGrab(false);
  emit strokesChanged();
}

void SignatureItem::paint(QPainter* painter) {
  painter->setRenderHint(QPainter::Antialiasing);
  painter->setPen(QPen(ink_, signature_line_px, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  const double scale = width();
  for (const auto& stroke : strokes_) {
    if (stroke.points.empty()) continue;
    const auto at = [&](std::size_t i) {
      return QPointF(stroke.points[i].x * scale, stroke.points[i].y * scale);
    };
    if (stroke.points.size() == 1) {
      painter->drawPoint(at(0));
      continue;
    }
    QPainterPath path(at(0));
    for (std::size_t i = 1; i + 1 < stroke.points.size(); ++i)
      path.quadTo(at(i), (at(i) + at(i + 1)) / 2);
    path.lineTo(at(stroke.points.size() - 1));
    painter->drawPath(path);
  }
}

}  // namespace jambline::screens
