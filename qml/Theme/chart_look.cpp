#include "chart_look.h"

#include <QPolygonF>

namespace jambline::theme {

void draw_look(QPainter& painter, const QPointF& at, int look, double size,
               const LookColors& colors) {
  using Value = ChartLook::Value;
  const auto value = static_cast<Value>(look);
  const double half = size / 2;
  const bool more = value == Value::Above || value == Value::RunAbove;
  switch (value) {
    case Value::Above:
    case Value::Below: {
      const double tip = more ? -half : half;
      painter.setPen(QPen(colors.ground, 1));
      painter.setBrush(more ? colors.more : colors.less);
      painter.drawPolygon(
          QPolygonF({QPointF(at.x(), at.y() + tip), QPointF(at.x() + half, at.y() - tip),
                     QPointF(at.x() - half, at.y() - tip)}));
      return;
    }
    case Value::RunAbove:
    case Value::RunBelow:
      painter.setPen(QPen(more ? colors.more : colors.less, size / 6));
      painter.setBrush(colors.ground);
      painter.drawEllipse(at, half - size / 12, half - size / 12);
      return;
    case Value::Plain:
      break;
  }
  painter.setPen(Qt::NoPen);
  painter.setBrush(colors.plain);
  painter.drawEllipse(at, half, half);
}

}  // namespace jambline::theme
