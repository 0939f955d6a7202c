#include "app/demo_pictures/scene.h"

#include <algorithm>
#include <cmath>

namespace jambline::demo {

namespace {
using job::DefectKind;

QColor lit(const QColor& color, double light) {
  const double part = std::clamp(std::abs(light), 0.0, 1.0);
  const double to = light < 0 ? 0 : 1;
  return QColor::fromRgbF(static_cast<float>(color.redF() + (to - color.redF()) * part),
                          static_cast<float>(color.greenF() + (to - color.greenF()) * part),
                          static_cast<float>(color.blueF() + (to - color.blueF()) * part));
}

// A camera lifts what is very dark and holds back what is very light.
QColor as_exposed(const QColor& color) {
  const double gray = (color.redF() + color.greenF() + color.blueF()) / 3;
  if (gray < 0.22) return lit(color, 0.22 - gray);
  return gray > 0.8 ? lit(color, 0.8 - gray) : color;
}

QPainterPath ellipse(double x, double y, double across, double down) {
  QPainterPath path;
  path.addEllipse(QPointF(x, y), across, down);
  return path;
}
}  // namespace

Scene::Scene(QPainter& painter, const PictureWish& wish)
    : painter_(painter), wish_(wish), random_(static_cast<std::uint32_t>(wish.seed | 1U)) {}

bool Scene::sees(DefectKind kind) const {
  return std::find(wish_.seen.begin(), wish_.seen.end(), kind) != wish_.seen.end();
}

QColor Scene::other(double light) const {
  return lit(as_exposed(QColor(QString::fromStdString(wish_.color.hex))), light);
}

QColor Scene::body(double light) const {
  if (wish_.surface == Surface::Primed) return lit(QColor(0x8c, 0x8a, 0x83), light * 0.4);
  return other(light);
}

void Scene::fill(const QPainterPath& path, const QColor& color) {
  painter_.fillPath(path, color);
}

void Scene::fill_down(const QPainterPath& path, const QColor& top, const QColor& bottom) {
  const QRectF box = path.boundingRect();
  QLinearGradient down(box.topLeft(), box.bottomLeft());
  down.setColorAt(0, top);
  down.setColorAt(1, bottom);
  painter_.fillPath(path, down);
}

void Scene::line(const QPainterPath& path, const QColor& color, double width) {
  painter_.strokePath(path, QPen(color, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
}

void Scene::room() {
  QPainterPath wall;
  wall.addRect(0, 0, wide, 0.62);
  fill_down(wall, QColor(0xc9, 0xc6, 0xbd), QColor(0x9a, 0x98, 0x90));
  for (double x = at_random(-0.2, 0); x < wide; x += 0.22) {
    QPainterPath seam;
    seam.moveTo(x, 0);
    seam.lineTo(x, 0.62);
    line(seam, QColor(0x80, 0x7e, 0x77), 0.003);
  }
  for (double x = at_random(0, 0.2); x < wide; x += 0.45) {
    QPainterPath lamp;
    lamp.addRect(x, 0.03, 0.24, 0.025);
    fill(lamp, QColor(0xf2, 0xf1, 0xe8));
  }
  QPainterPath floor;
  floor.addRect(0, 0.62, wide, 0.38);
  fill_down(floor, QColor(0x73, 0x72, 0x6d), QColor(0x98, 0x96, 0x8f));
  for (int i = 0; i < 9; ++i) {
    const double x = at_random(0, wide);
    const double y = at_random(0.66, 0.98);
    fill(ellipse(x, y, at_random(0.01, 0.05), at_random(0.003, 0.01)), QColor(0x5e, 0x5d, 0x59));
  }
}

void Scene::lamps(double x, double y, double length) {
  painter_.save();
  painter_.translate(x, y);
  painter_.rotate(at_random(-14, 14));
  const double strength = wish_.surface == Surface::Finished ? 0.6 : 0.42;
  for (int tube = 0; tube < 2; ++tube) {
    QPainterPath back;
    const double drop = tube * 0.11;
    back.moveTo(-length / 2, drop);
    back.cubicTo(-length / 6, drop - 0.03, length / 6, drop + 0.03, length / 2, drop);
    line(back, body(strength * 0.5), 0.05);
    line(back, body(strength), 0.022);
  }
  painter_.restore();
}

void Scene::mark(DefectKind kind, double x, double y) {
  const double r = at_random(0.006, 0.010);
  switch (kind) {
    case DefectKind::RunOrSag: {
      QPainterPath run;
      run.moveTo(x, y - 0.08);
      run.cubicTo(x + 0.03, y, x - 0.02, y + 0.05, x, y + 0.1);
      line(run, body(-0.35), 0.022);
      run.translate(-0.006, -0.003);
      line(run, body(0.45), 0.008);
      return;
    }
    case DefectKind::HandlingScratch: {
      QPainterPath scratch;
      scratch.moveTo(x - 0.12, y + 0.03);
      scratch.lineTo(x + 0.11, y - 0.02);
      line(scratch, body(0.6), 0.004);
      return;
    }
    default:
      fill(ellipse(x + r * 0.7, y + r * 0.7, r * 1.5, r * 1.2), body(-0.4));
      fill(ellipse(x, y, r, r * 0.8), body(0.25));
      fill(ellipse(x - r * 0.3, y - r * 0.3, r * 0.4, r * 0.3), body(0.9));
      return;
  }
}

void Scene::surface(double x, double y, double extent) {
  if (wish_.surface == Surface::Damaged) {
    fill(ellipse(x, y, extent, extent * 0.55), other(-0.35));
    fill(ellipse(x - extent * 0.15, y - extent * 0.12, extent * 0.7, extent * 0.33), other(0.18));
    for (int i = 0; i < 6; ++i) {
      QPainterPath scratch;
      const double from = y + at_random(-0.4, 0.4) * extent;
      scratch.moveTo(x - extent, from);
      scratch.lineTo(x + extent * at_random(0.4, 1), from + at_random(-0.1, 0.1) * extent);
      line(scratch, QColor(0xd8, 0xd5, 0xcd), 0.0035);
    }
    return;
  }
  int count = 0;
  for (const DefectKind kind : wish_.seen) {
    if (++count > 5) break;
    mark(kind, x + (count - 1) * extent * at_random(-0.4, 0.4),
         y + (count - 1) * extent * at_random(-0.3, 0.3));
  }
}

}  // namespace jambline::demo
