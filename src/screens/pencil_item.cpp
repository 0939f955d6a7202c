#include "screens/pencil_item.h"

#include <QPainter>
#include <QPainterPath>
#include <cmath>
#include <cstdint>
#include <numbers>

namespace jambline::screens {

namespace {

// FNV-1a starts it, splitmix64 goes on: small, stable, not for secrets.
class Wobble {
 public:
  explicit Wobble(const QString& words) {
    for (const char byte : words.toUtf8())
      state_ = (state_ ^ static_cast<unsigned char>(byte)) * 1099511628211ULL;
  }
  double between(double low, double high) {
    state_ += 0x9E3779B97F4A7C15ULL;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
    z ^= z >> 31;
    return low + (high - low) * static_cast<double>(z >> 11) / 9007199254740992.0;
  }

 private:
  std::uint64_t state_ = 14695981039346656037ULL;
};

constexpr double line_px = 2.6;
constexpr double casing_px = 6;

}  // namespace

PencilItem::PencilItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setAntialiasing(true);
  connect(this, &PencilItem::lookChanged, this, [this] { update(); });
}

void PencilItem::paint(QPainter* painter) {
  painter->setRenderHint(QPainter::Antialiasing);
  const double size = std::min(width(), height());
  const QPointF middle(width() / 2, height() / 2);
  const double radius = size / 2 - casing_px / 2;
  Wobble hand(key_);
  const double start = hand.between(-1.3, -0.6);
  constexpr int steps = 16;
  constexpr int past = 2;
  const int upto = static_cast<int>(std::lround((steps + past) * std::clamp(drawn_, 0.0, 1.0)));
  if (upto < 2) return;
  QList<QPointF> points;
  for (int i = 0; i <= upto; ++i) {
    const double angle = start + 2 * std::numbers::pi * i / steps;
    const double inward = i > steps ? 0.07 * (i - steps) : 0;
    const double r = radius * (1 - hand.between(0, 0.07) - inward);
    points << middle + QPointF(r * std::cos(angle), r * std::sin(angle));
  }
  QPainterPath path(points.first());
  for (qsizetype i = 1; i + 1 < points.size(); ++i)
    path.quadTo(points[i], (points[i] + points[i + 1]) / 2);
  path.lineTo(points.last());
  if (struck_) {
    const QPointF reach(radius, -radius * hand.between(0.75, 0.95));
    path.moveTo(middle - reach);
    path.lineTo(middle + reach);
  }

  painter->setPen(Qt::NoPen);
  if (filled_) {
    painter->setBrush(casing_);
    painter->drawEllipse(middle, radius, radius);
  }
  painter->setBrush(Qt::NoBrush);
  painter->setPen(QPen(casing_, casing_px, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter->drawPath(path);
  painter->setPen(QPen(color_, line_px, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter->drawPath(path);
}

}  // namespace jambline::screens
