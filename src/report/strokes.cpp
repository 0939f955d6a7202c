#include "report/strokes.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>

namespace jambline::report {

namespace {
constexpr int signature_px = 1200;
constexpr double signature_line_px = 7;
}  // namespace

QImage drawn(const std::vector<job::Stroke>& strokes) {
  double height = 0;
  for (const auto& stroke : strokes)
    for (const auto& point : stroke.points) height = std::max(height, point.y);
  QImage out(signature_px, std::max(1, qRound(signature_px * height + 2 * signature_line_px)),
             QImage::Format_ARGB32);
  out.fill(Qt::white);
  QPainter painter(&out);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(Qt::black, signature_line_px, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  for (const auto& stroke : strokes) {
    if (stroke.points.empty()) continue;
    QPainterPath path;
    for (const auto& point : stroke.points) {
      const QPointF at(point.x * signature_px, point.y * signature_px + signature_line_px);
      path.elementCount() == 0 ? path.moveTo(at) : path.lineTo(at);
    }
    stroke.points.size() == 1 ? painter.drawPoint(path.currentPosition()) : painter.drawPath(path);
  }
  return out;
}

}  // namespace jambline::report
