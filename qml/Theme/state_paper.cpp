#include "state_paper.h"

#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "seed.h"

namespace {

constexpr double kPi = 3.14159265358979;

QPen roundPen(const QColor& color, double width) {
  return {color, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin};
}

}  // namespace

void StatePaper::paintRing(QPainter* painter, double size) const {
  jambline::theme::Seed seed(key_, 4);
  const double line = std::max(2.0, size * 0.1);
  const double radius = size / 2 - line / 2 - 1.0;
  const double start = seed.between(-1.2, -0.5);
  constexpr int kSteps = 14;
  QList<QPointF> points;
  for (int i = 0; i <= kSteps + 1; ++i) {
    const double angle = start + 2 * kPi * i / kSteps;
    const double r = radius * (1.0 - seed.between(0.0, 0.09) - (i > kSteps ? 0.16 : 0.0));
    points << QPointF(size / 2 + r * std::cos(angle), size / 2 + r * std::sin(angle));
  }
  QPainterPath path(points.first());
  for (int i = 1; i + 1 < points.size(); ++i) {
    path.quadTo(points[i], (points[i] + points[i + 1]) / 2);
  }
  path.lineTo(points.last());
  painter->setBrush(Qt::NoBrush);
  painter->setPen(roundPen(color_, line));
  painter->drawPath(path);
}

void StatePaper::paintUnseen(QPainter* painter, double size) const {
  const QRectF box(1, 1, size - 2, size - 2);
  painter->setPen(QPen(color_, 1.5));
  painter->setBrush(Qt::NoBrush);
  painter->drawRoundedRect(box, 2, 2);
  painter->setClipRect(box);
  painter->setPen(QPen(color_, 1.0));
  for (double x = 3.0; x < 2 * size; x += 5.0) {
    painter->drawLine(QPointF(x, 0), QPointF(x - size, size));
  }
}

void StatePaper::paint(QPainter* painter) {
  painter->setRenderHint(QPainter::Antialiasing);
  const double s = std::min(width(), height());
  painter->translate((width() - s) / 2, (height() - s) / 2);
  const double c = s / 2;
  painter->setPen(Qt::NoPen);
  painter->setBrush(color_);
  switch (static_cast<ShapeKind::Value>(kind_)) {
    case ShapeKind::Value::None:
      break;
    case ShapeKind::Value::Done: {
      painter->drawRoundedRect(QRectF(0, 0, s, s), 2, 2);
      painter->setPen(roundPen(ground_, s * 0.13));
      const QPointF tick[] = {{s * 0.25, s * 0.52}, {s * 0.44, s * 0.73}, {s * 0.78, s * 0.29}};
      painter->drawPolyline(tick, 3);
      break;
    }
    case ShapeKind::Value::Running:
      painter->drawEllipse(QPointF(c, c), c, c);
      break;
    case ShapeKind::Value::Waits: {
      const double line = std::max(2.0, s * 0.085);
      const double r = c - line / 2;
      painter->setBrush(ground_);
      painter->setPen(QPen(color_, line));
      painter->drawEllipse(QPointF(c, c), r, r);
      painter->setPen(Qt::NoPen);
      painter->setBrush(color_);
      painter->drawPie(QRectF(c - r, c - r, 2 * r, 2 * r), -90 * 16, 180 * 16);
      break;
    }
    case ShapeKind::Value::Must: {
      painter->setPen(roundPen(color_, 1.5));
      const QPointF triangle[] = {{1.0, s * 0.93}, {c, s * 0.06}, {s - 1.0, s * 0.93}};
      painter->drawPolygon(triangle, 3);
      painter->setPen(roundPen(ground_, s * 0.11));
      painter->drawLine(QPointF(c, s * 0.38), QPointF(c, s * 0.62));
      painter->setPen(Qt::NoPen);
      painter->setBrush(ground_);
      painter->drawEllipse(QPointF(c, s * 0.79), s * 0.065, s * 0.065);
      break;
    }
    case ShapeKind::Value::NotYet: {
      QPen pen(color_, 2.0, Qt::SolidLine, Qt::FlatCap);
      const double r = c - 1.5;
      const double turn = 2 * kPi * r / 2.0;
      const int dashes = std::max(8, static_cast<int>(std::lround(turn / 3.2)));
      pen.setDashPattern({turn / dashes * 0.55, turn / dashes * 0.45});
      painter->setPen(pen);
      painter->setBrush(Qt::NoBrush);
      painter->drawEllipse(QPointF(c, c), r, r);
      break;
    }
    case ShapeKind::Value::Unseen:
      paintUnseen(painter, s);
      break;
    case ShapeKind::Value::Disputed: {
      const double line = std::max(2.0, s * 0.08);
      painter->setPen(roundPen(color_, line));
      painter->setBrush(ground_);
      const QPointF diamond[] = {{c, line}, {s - line, c}, {c, s - line}, {line, c}};
      painter->drawPolygon(diamond, 4);
      painter->drawLine(QPointF(c, s * 0.24), QPointF(c, s * 0.76));
      break;
    }
    case ShapeKind::Value::Respray:
      painter->setPen(roundPen(color_, std::max(2.5, s * 0.13)));
      painter->drawLine(QPointF(s * 0.14, s * 0.14), QPointF(s * 0.86, s * 0.86));
      painter->drawLine(QPointF(s * 0.86, s * 0.14), QPointF(s * 0.14, s * 0.86));
      break;
    case ShapeKind::Value::Paused:
      painter->drawRoundedRect(QRectF(s * 0.2, s * 0.08, s * 0.22, s * 0.84), 1, 1);
      painter->drawRoundedRect(QRectF(s * 0.58, s * 0.08, s * 0.22, s * 0.84), 1, 1);
      break;
    case ShapeKind::Value::Ring:
      paintRing(painter, s);
      break;
  }
}
