#include "rule_paper.h"

#include <algorithm>

void RulePaper::refresh() {
  Paper::refresh();
  emit scaleChanged();
}

double RulePaper::dpPerHour() const {
  if (allotted_ <= 0.0) {
    return std::min(150.0, used_ > 0.0 ? width() / (used_ * 1.05) : 150.0);
  }
  return width() / std::max(allotted_ / 0.74, used_ * 1.05);
}

double RulePaper::tick_h() const {
  const double scale = dpPerHour();
  for (const double step : {0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0}) {
    if (step * scale >= 12.0) {
      return step;
    }
  }
  return 100.0;
}

void RulePaper::paint(QPainter* painter) {
  painter->setRenderHint(QPainter::Antialiasing);
  const double w = width();
  painter->fillRect(QRectF(0, 0, w, 1.5), ink_);
  const double step = tick_h() * dpPerHour();
  if (step >= 1.0) {
    int n = 0;
    for (double x = 0.5; x < w; x += step, ++n) {
      painter->fillRect(QRectF(x - 0.5, 0, 1, n % 5 == 0 ? 13 : 7), ink_);
    }
  }
  if (used_ > 0.0) {
    painter->fillRect(QRectF(0, 0, std::min(w, std::max(2.0, usedX())), 5), bar_);
  }
  if (allotted_ > 0.0) {
    const double x = flagX();
    const QPointF flag[] = {{x, 0.5}, {x + 13, 0.5}, {x + 9, 7}, {x + 13, 14}, {x, 14}};
    painter->setPen(QPen(ink_, 1, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter->setBrush(flag_);
    painter->drawPolygon(flag, 5);
  }
}
