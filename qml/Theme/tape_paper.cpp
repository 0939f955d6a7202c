#include "tape_paper.h"

#include <algorithm>
#include <cmath>

#include "seed.h"

namespace {

constexpr double kTear = 6.0;
constexpr double kTearStep = 7.2;
constexpr double kCrepeStep = 9.0;

}  // namespace

QList<QPointF> TapePaper::outline() const {
  const double w = width();
  const double h = height();
  const int steps = std::max(2, static_cast<int>(std::lround(h / kTearStep)));
  QList<QPointF> points;
  jambline::theme::Seed right(key_, 1);
  for (int i = 0; i <= steps; ++i) {
    const double y = h * i / steps;
    points << QPointF(torn_right_ ? w - right.between(0.0, kTear) : w, y);
  }
  jambline::theme::Seed left(key_, 2);
  for (int i = steps; i >= 0; --i) {
    const double y = h * i / steps;
    points << QPointF(torn_left_ ? left.between(0.0, kTear * 0.75) : 0.0, y);
  }
  return points;
}

void TapePaper::paint(QPainter* painter) {
  painter->setRenderHint(QPainter::Antialiasing);
  const QPolygonF shape(outline());
  painter->setPen(Qt::NoPen);
  painter->setBrush(color_);
  painter->drawPolygon(shape);
  QColor line = crepe_;
  line.setAlphaF(0.06F);
  painter->setPen(QPen(line, 1.0));
  jambline::theme::Seed crepe(key_, 3);
  const double h = height();
  for (double x = kCrepeStep * 0.8; x < width() - kTear; x += kCrepeStep) {
    const double at = x + crepe.between(-2.5, 2.5);
    const double lean = crepe.between(-1.0, 1.0);
    const double top = crepe.between(0.01, 0.3) * h;
    const double bottom = crepe.between(0.7, 0.99) * h;
    painter->drawLine(QPointF(at, top), QPointF(at + lean, bottom));
  }
}
