#include "dash_frame.h"

void DashFrame::paint(QPainter* painter) {
  painter->setRenderHint(QPainter::Antialiasing);
  QPen pen(color_, thickness_, Qt::SolidLine, Qt::FlatCap);
  pen.setDashPattern({dash_ / thickness_, gap_ / thickness_});
  painter->setPen(pen);
  painter->setBrush(Qt::NoBrush);
  if (height() <= thickness_) {
    painter->drawLine(QPointF(0, height() / 2), QPointF(width(), height() / 2));
  } else if (width() <= thickness_) {
    painter->drawLine(QPointF(width() / 2, 0), QPointF(width() / 2, height()));
  } else {
    const double half = thickness_ / 2;
    painter->drawRoundedRect(QRectF(0, 0, width(), height()).adjusted(half, half, -half, -half),
                             radius_, radius_);
  }
}
