#include "hatch_paper.h"

#include <QPainterPath>
#include <algorithm>

void HatchPaper::paint(QPainter* painter) {
  painter->setRenderHint(QPainter::Antialiasing);
  if (radius_ > 0.0) {
    QPainterPath clip;
    clip.addRoundedRect(QRectF(0, 0, width(), height()), radius_, radius_);
    painter->setClipPath(clip);
  }
  painter->setPen(QPen(color_, thickness_));
  const double step = std::max(2.0, spacing_) * 1.41421356;
  for (double x = step / 2; x < width() + height(); x += step) {
    painter->drawLine(QPointF(x, 0), QPointF(x - height(), height()));
  }
}
