#include "screens/shot_item.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

namespace jambline::screens {

namespace {
constexpr double line_width = 2.2;

struct Pencil {
  QPainter& painter;
  QColor line;
  QColor eye;

  void solid(double width = line_width) const {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(line, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  }
  void dashed() const {
    QPen pen(line, 1.6, Qt::CustomDashLine, Qt::FlatCap);
    pen.setDashPattern({2.5, 2.5});
    painter.setBrush(Qt::NoBrush);
    painter.setPen(pen);
  }
  void lines(std::initializer_list<QPointF> points) const {
    painter.drawPolyline(QPolygonF(QList<QPointF>(points)));
  }
  void outline(std::initializer_list<QPointF> points) const {
    painter.drawPolygon(QPolygonF(QList<QPointF>(points)));
  }
  // Stands at `from` and looks at `to`: a filled wedge, and the line of sight.
  void look(QPointF from, QPointF to) const {
    const double length = std::hypot(to.x() - from.x(), to.y() - from.y());
    const QPointF along = (to - from) / length;
    const QPointF across(-along.y(), along.x());
    dashed();
    painter.drawLine(from + along * 16, to);
    painter.setPen(Qt::NoPen);
    painter.setBrush(eye);
    painter.drawPolygon(
        QPolygonF(QList<QPointF>{from + along * 16, from + across * 6, from - across * 6}));
  }
  // What the picture holds: its four corners.
  void frame(const QRectF& box) const {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(eye, line_width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    const double arm = 11;
    for (const double x : {box.left(), box.right()})
      for (const double y : {box.top(), box.bottom()}) {
        const double in_x = x == box.left() ? arm : -arm;
        const double in_y = y == box.top() ? arm : -arm;
        lines({{x + in_x, y}, {x, y}, {x, y + in_y}});
      }
  }
  void car_from_above() const {
    solid();
    painter.drawRoundedRect(QRectF(34, 20, 32, 60), 9, 9);
    lines({{37, 40}, {41, 34}, {59, 34}, {63, 40}});
    lines({{38, 66}, {42, 70}, {58, 70}, {62, 66}});
    lines({{34, 41}, {29, 39}});
    lines({{66, 41}, {71, 39}});
  }
  void door() const {
    solid();
    QPainterPath path(QPointF(26, 82));
    path.lineTo(24, 46);
    path.lineTo(40, 20);
    path.lineTo(74, 20);
    path.lineTo(76, 82);
    path.closeSubpath();
    painter.drawPath(path);
    lines({{24, 46}, {75, 46}});
    lines({{64, 54}, {72, 54}});
  }
};

void corner(const Pencil& pencil, QPointF from, QPointF to) {
  pencil.car_from_above();
  pencil.look(from, to);
}

void inside(const Pencil& pencil) {
  pencil.solid();
  pencil.painter.drawEllipse(QPointF(50, 62), 24, 24);
  pencil.painter.drawEllipse(QPointF(50, 62), 6, 6);
  pencil.lines({{44, 62}, {26, 62}});
  pencil.lines({{56, 62}, {74, 62}});
  pencil.lines({{50, 68}, {50, 86}});
  pencil.painter.drawArc(QRectF(33, 18, 34, 34), 20 * 16, 140 * 16);
  pencil.lines({{50, 35}, {58, 26}});
  pencil.frame(QRectF(10, 8, 80, 84));
}

void label(const Pencil& pencil) {
  pencil.solid();
  pencil.painter.drawRoundedRect(QRectF(22, 34, 56, 32), 3, 3);
  pencil.lines({{29, 44}, {71, 44}});
  pencil.lines({{29, 50}, {60, 50}});
  for (double x = 30; x < 70; x += 5) pencil.lines({{x, 56}, {x, 61}});
  pencil.frame(QRectF(10, 22, 80, 56));
}

void panel_wide(const Pencil& pencil) {
  pencil.door();
  pencil.frame(QRectF(10, 8, 80, 84));
}

void panel_close(const Pencil& pencil) {
  pencil.door();
  pencil.solid();
  pencil.painter.drawEllipse(QPointF(58, 64), 3, 3);
  pencil.frame(QRectF(44, 46, 40, 30));
}

void side_light(const Pencil& pencil) {
  pencil.solid();
  QPainterPath path(QPointF(8, 72));
  path.quadTo(50, 58, 92, 72);
  pencil.painter.drawPath(path);
  pencil.lines({{47, 65}, {50, 61}, {53, 65}});
  pencil.painter.drawEllipse(QPointF(16, 46), 7, 7);
  pencil.dashed();
  for (const double y : {50.0, 56.0, 62.0}) pencil.lines({{24, y - 3}, {56, y + 2}});
  pencil.look({90, 40}, {54, 61});
}

void along_edge(const Pencil& pencil) {
  pencil.solid();
  pencil.lines({{24, 90}, {52, 14}});
  pencil.lines({{44, 92}, {58, 14}});
  pencil.lines({{24, 90}, {8, 78}});
  pencil.lines({{52, 14}, {12, 30}});
  pencil.dashed();
  pencil.lines({{34, 91}, {55, 14}});
  pencil.look({80, 84}, {54, 40});
}

void jamb(const Pencil& pencil) {
  pencil.solid();
  pencil.outline({{34, 16}, {66, 16}, {72, 46}, {70, 86}, {36, 86}, {30, 46}});
  pencil.painter.setBrush(Qt::NoBrush);
  pencil.lines({{30, 46}, {10, 52}, {14, 92}, {36, 86}});
  pencil.lines({{34, 16}, {22, 26}, {10, 52}});
  pencil.painter.drawRect(QRectF(63, 54, 4, 10));
  pencil.frame(QRectF(46, 30, 44, 50));
}

void gap(const Pencil& pencil) {
  pencil.solid();
  pencil.lines({{12, 16}, {46, 16}, {46, 84}, {12, 84}});
  pencil.lines({{88, 16}, {54, 16}, {54, 84}, {88, 84}});
  pencil.painter.drawRect(QRectF(30, 44, 40, 12));
  for (double x = 35; x < 70; x += 5) pencil.lines({{x, 44}, {x, x == 50 ? 52.0 : 48.0}});
  pencil.frame(QRectF(20, 32, 60, 36));
}

void underneath(const Pencil& pencil) {
  pencil.solid();
  QPainterPath path(QPointF(8, 54));
  path.lineTo(10, 42);
  path.lineTo(28, 38);
  path.lineTo(40, 24);
  path.lineTo(66, 24);
  path.lineTo(78, 38);
  path.lineTo(92, 42);
  path.lineTo(92, 54);
  path.closeSubpath();
  pencil.painter.drawPath(path);
  pencil.painter.drawEllipse(QPointF(26, 56), 8, 8);
  pencil.painter.drawEllipse(QPointF(76, 56), 8, 8);
  pencil.look({50, 92}, {50, 56});
}
}  // namespace

void draw_shot(QPainter& painter, job::ShotView view, const QColor& line, const QColor& eye) {
  const Pencil pencil{painter, line, eye};
  switch (view) {
    case job::ShotView::FrontLeftCorner:
      return corner(pencil, {10, 8}, {36, 24});
    case job::ShotView::FrontRightCorner:
      return corner(pencil, {90, 8}, {64, 24});
    case job::ShotView::RearLeftCorner:
      return corner(pencil, {10, 92}, {36, 76});
    case job::ShotView::RearRightCorner:
      return corner(pencil, {90, 92}, {64, 76});
    case job::ShotView::Inside:
      return inside(pencil);
    case job::ShotView::PlateOrLabel:
      return label(pencil);
    case job::ShotView::PanelWide:
      return panel_wide(pencil);
    case job::ShotView::PanelClose:
      return panel_close(pencil);
    case job::ShotView::SideLight:
      return side_light(pencil);
    case job::ShotView::AlongEdge:
      return along_edge(pencil);
    case job::ShotView::Jamb:
      return jamb(pencil);
    case job::ShotView::Gap:
      return gap(pencil);
    case job::ShotView::Underneath:
      return underneath(pencil);
  }
}

ShotItem::ShotItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setAntialiasing(true);
  connect(this, &ShotItem::lookChanged, this, [this] { update(); });
}

void ShotItem::paint(QPainter* painter) {
  if (view_ < 0 || view_ > static_cast<int>(job::ShotView::Underneath)) return;
  const double side = std::min(width(), height());
  painter->setRenderHint(QPainter::Antialiasing);
  painter->translate((width() - side) / 2, (height() - side) / 2);
  painter->scale(side / 100, side / 100);
  draw_shot(*painter, static_cast<job::ShotView>(view_), line_, eye_);
}

}  // namespace jambline::screens
