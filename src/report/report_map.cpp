#include <QPen>
#include <QPolygonF>
#include <algorithm>

#include "report/report_pieces.h"

namespace jambline::report {

namespace {
constexpr double most_height_mm = 92;
constexpr double mark_mm = 1.5;  // its radius

class Drawing {
 public:
  Drawing(const trade::Box_mm& box, double width, double height)
      : box_(box), scale_(std::min(width / box.width_mm(), height / box.height_mm())) {
    left_ = (width - scale_ * box.width_mm()) / 2;
  }
  double height() const { return scale_ * box_.height_mm(); }
  QPointF at(trade::Point_mm point, double top) const {
    return {left_ + scale_ * (point.x_mm - box_.low.x_mm),
            top + scale_ * (box_.high.y_mm - point.y_mm)};
  }
  QPolygonF at(const trade::Polygon& polygon, double top) const {
    QPolygonF out;
    for (const auto& corner : polygon.corners) out << at(corner, top);
    return out;
  }

 private:
  trade::Box_mm box_;
  double scale_;
  double left_ = 0;
};

void draw_car(QPainter& painter, const Drawing& drawing, const ReportMap& map, double top) {
  const auto& pattern = job::pattern(map.body);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(QColor(150, 150, 150), points(0.4), Qt::DashLine));
  for (const auto& pane : pattern.glass) painter.drawPolygon(drawing.at(pane, top));
  for (const auto& panel : pattern.panels) {
    const bool worked_on = map.worked_on.count(panel.panel) > 0;
    painter.setPen(QPen(Qt::black, points(worked_on ? 0.9 : 0.4)));
    painter.setBrush(worked_on ? QBrush(QColor(232, 232, 232)) : QBrush(Qt::NoBrush));
    painter.drawPolygon(drawing.at(panel.place.apply(panel.shape.outline), top));
  }
}

void draw_marks(QPainter& painter, const Drawing& drawing, const ReportMap& map, double top) {
  const double radius = millimetres(mark_mm);
  for (const auto& mark : map.marks) {
    const auto* panel = job::pattern(map.body).find(mark.panel);
    if (!panel) continue;
    const QPointF middle = drawing.at(panel->place.apply(mark.at), top);
    painter.setPen(QPen(Qt::black, points(0.6)));
    painter.setBrush(mark.open ? Qt::black : Qt::white);
    painter.drawEllipse(middle, radius, radius);
    painter.setPen(mark.open ? Qt::white : Qt::black);
    painter.drawText(
        QRectF(middle.x() - 2 * radius, middle.y() - 2 * radius, 4 * radius, 4 * radius),
        Qt::AlignCenter, QString::number(mark.number));
  }
}
}  // namespace

void add_map(std::vector<Piece>& to, const Paper& paper, const ReportMap& map) {
  const Drawing drawing(job::pattern(map.body).bounds, paper.width(), millimetres(most_height_mm));
  const SetText legend(paper, map.legend, Look::Small, paper.width());
  Piece piece;
  piece.height = drawing.height() + points(6) + legend.height();
  piece.above = points(8);
  piece.draw = [drawing, legend, &map, paper](QPainter& painter, double top) -> Status {
    painter.save();
    QFont digits = paper.font(Look::Small);
    digits.setPointSizeF(4.8);
    painter.setFont(digits);
    draw_car(painter, drawing, map, top);
    draw_marks(painter, drawing, map, top);
    painter.restore();
    legend.draw(painter, 0, top + drawing.height() + points(6));
    return {};
  };
  to.push_back(std::move(piece));
}

}  // namespace jambline::report
