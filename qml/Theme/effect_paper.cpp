#include "effect_paper.h"

#include <algorithm>

#include "chart_geometry.h"

using jambline::theme::log_place;

void EffectPaper::paint(QPainter* painter) {
  painter->setRenderHint(QPainter::Antialiasing);
  const double middle = height() / 2;
  const double inset = 8;
  const double reach = std::max(1.01, reach_);
  const auto x_of = [&](double value) {
    return inset + log_place(value, reach) * (width() - 2 * inset);
  };
  QPen axis(edge_, 1.5);
  if (too_few_) axis.setDashPattern({3, 3});
  painter->setPen(axis);
  painter->drawLine(QPointF(inset, middle), QPointF(width() - inset, middle));
  painter->setPen(QPen(edge_, 1));
  for (double part = 2; part < reach; part *= 2)
    for (const double at : {part, 1 / part})
      painter->drawLine(QPointF(x_of(at), middle - 4), QPointF(x_of(at), middle + 4));
  painter->setPen(QPen(edge_, 2));
  painter->drawLine(QPointF(x_of(1), 0), QPointF(x_of(1), height()));
  if (too_few_) return;

  const double left = x_of(low_);
  const double right = unbounded_ ? width() - inset : x_of(high_);
  const double thick = strong_ ? 6 : 3;
  painter->fillRect(QRectF(left, middle - thick / 2, std::max(2.0, right - left), thick), tone_);
  painter->setPen(QPen(tone_, 2, Qt::SolidLine, Qt::RoundCap));
  const auto arrow = [&](double x, double out) {
    painter->drawLine(QPointF(x, middle), QPointF(x - out, middle - 6));
    painter->drawLine(QPointF(x, middle), QPointF(x - out, middle + 6));
  };
  if (low_ <= 1 / reach) arrow(inset - 4, -6);
  if (unbounded_ || high_ >= reach) arrow(width() - inset + 4, 6);
  if (unbounded_) return;
  painter->setBrush(strong_ ? tone_ : ground_);
  painter->drawEllipse(QPointF(x_of(ratio_), middle), 6, 6);
}
