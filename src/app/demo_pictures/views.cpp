#include <BitMatrix.h>
#include <MultiFormatWriter.h>

#include "app/demo_pictures/scene.h"

namespace jambline::demo {

namespace {
using job::DefectKind;

const QColor rubber(0x24, 0x25, 0x26);
const QColor glass(0x3d, 0x47, 0x4c);
const QColor primer(0x8c, 0x8a, 0x83);
const QColor tape(0xc9, 0xb4, 0x7a);

QPainterPath rectangle(double x, double y, double width, double height, double round = 0) {
  QPainterPath path;
  path.addRoundedRect(QRectF(x, y, width, height), round, round);
  return path;
}

QPainterPath circle(double x, double y, double r) {
  QPainterPath path;
  path.addEllipse(QPointF(x, y), r, r);
  return path;
}

void wheel(Scene& scene, double x, double y, double r) {
  scene.fill(circle(x, y, r), rubber);
  scene.fill(circle(x, y, r * 0.66), QColor(0xa6, 0xa8, 0xa9));
  for (int spoke = 0; spoke < 5; ++spoke) {
    scene.paint().save();
    scene.paint().translate(x, y);
    scene.paint().rotate(spoke * 72 + 10);
    scene.fill(rectangle(-r * 0.11, -r * 0.6, r * 0.22, r * 0.32, r * 0.08), rubber);
    scene.paint().restore();
  }
}

void scale_strip(Scene& scene, double x, double y, double length) {
  scene.fill(rectangle(x, y, length, 0.05), QColor(0xdd, 0xdb, 0xd2));
  for (int i = 0; i * 0.02 < length; ++i)
    scene.fill(rectangle(x + i * 0.02, y, 0.003, i % 5 == 0 ? 0.03 : 0.015), rubber);
}
}  // namespace

void paint_corner(Scene& scene, bool front, bool left) {
  scene.room();
  if (!left) {
    scene.paint().translate(wide, 0);
    scene.paint().scale(-1, 1);
  }
  const double tall = scene.wish().body == job::BodyShape::FourDoorSedan ||
                              scene.wish().body == job::BodyShape::TwoDoorHatchback
                          ? 0
                          : 0.07;
  QPainterPath shade;
  shade.addEllipse(QPointF(0.68, 0.82), 0.6, 0.06);
  scene.fill(shade, QColor(0x4a, 0x49, 0x46));
  QPainterPath cabin;
  cabin.moveTo(0.42, 0.45);
  cabin.cubicTo(0.52, 0.26 - tall, 0.6, 0.24 - tall, 0.78, 0.24 - tall);
  cabin.cubicTo(1.0, 0.24 - tall, 1.06, 0.3 - tall, 1.15, 0.46);
  cabin.closeSubpath();
  scene.fill_down(cabin, scene.other(0.25), scene.other(-0.05));
  QPainterPath window;
  window.moveTo(0.5, 0.44);
  window.cubicTo(0.57, 0.3 - tall, 0.62, 0.28 - tall, 0.78, 0.28 - tall);
  window.cubicTo(0.95, 0.28 - tall, 1.0, 0.32 - tall, 1.06, 0.45);
  window.closeSubpath();
  scene.fill(window, glass);
  scene.fill(rectangle(0.77, 0.27 - tall, 0.02, 0.18), scene.other(-0.1));
  QPainterPath body;
  body.moveTo(0.1, 0.74);
  body.cubicTo(0.06, 0.6, 0.08, 0.5, 0.16, 0.48);
  body.cubicTo(0.3, 0.44, 0.4, 0.44, 0.5, 0.44);
  body.lineTo(1.12, 0.45);
  body.cubicTo(1.24, 0.47, 1.26, 0.56, 1.25, 0.72);
  body.lineTo(1.2, 0.79);
  body.lineTo(0.16, 0.79);
  body.closeSubpath();
  scene.fill_down(body, scene.other(0.3), scene.other(-0.3));
  QPainterPath crease;
  crease.moveTo(0.2, 0.6);
  crease.cubicTo(0.5, 0.55, 0.9, 0.55, 1.23, 0.58);
  scene.line(crease, scene.other(0.4), 0.008);
  crease.translate(0, 0.012);
  scene.line(crease, scene.other(-0.35), 0.006);
  for (const double x : {0.62, 0.94}) {
    QPainterPath gap;
    gap.moveTo(x, 0.45);
    gap.lineTo(x + 0.01, 0.76);
    scene.line(gap, scene.other(-0.6), 0.005);
  }
  wheel(scene, 0.38, 0.77, 0.11);
  wheel(scene, 1.04, 0.77, 0.1);
  scene.fill(rectangle(0.1, 0.52, 0.12, 0.06, 0.02),
             front ? QColor(0xe4, 0xe6, 0xe4) : QColor(0x8a, 0x23, 0x20));
  scene.fill(rectangle(0.09, 0.64, 0.15, 0.07, 0.01), rubber);
  scene.fill(rectangle(0.11, 0.6, 0.1, 0.035), QColor(0xd8, 0xd6, 0xcc));
  if (scene.wish().surface == Surface::Damaged)
    scene.surface(scene.at_random(0.45, 0.9), 0.64, 0.1);
}

void paint_panel(Scene& scene) {
  scene.room();
  const QPainterPath panel = rectangle(0.12, 0.14, 1.1, 0.7, 0.08);
  scene.fill_down(panel, scene.body(0.3), scene.body(-0.25));
  scene.paint().setClipPath(panel);
  scene.lamps(0.68, 0.3, 1.4);
  QPainterPath crease;
  crease.moveTo(0.1, 0.6);
  crease.cubicTo(0.5, 0.52, 0.9, 0.54, 1.3, 0.58);
  scene.line(crease, scene.body(-0.4), 0.012);
  scene.fill(rectangle(0.98, 0.62, 0.15, 0.04, 0.02), scene.body(-0.5));
  scene.surface(0.6, 0.44, 0.12);
  scene.paint().setClipping(false);
}

void paint_close(Scene& scene, bool side_light) {
  const QPainterPath all = rectangle(0, 0, wide, 1);
  scene.fill_down(all, scene.body(side_light ? 0.1 : 0.25), scene.body(-0.28));
  scene.lamps(0.6, side_light ? 0.5 : 0.2, 1.8);
  QPainterPath edge;  // the landmark of the panel
  edge.moveTo(-0.1, 0.86);
  edge.cubicTo(0.4, scene.at_random(0.7, 0.8), 0.9, 0.82, 1.5, 0.72);
  scene.line(edge, scene.body(-0.65), 0.022);
  edge.translate(0, -0.02);
  scene.line(edge, scene.body(0.5), 0.007);
  scale_strip(scene, scene.at_random(0.05, 0.3), 0.9, 0.5);
  scene.surface(scene.at_random(0.55, 0.75), scene.at_random(0.38, 0.52), 0.2);
  if (scene.sees(DefectKind::PrimerShowing)) {
    QPainterPath bare;
    bare.addEllipse(QPointF(0.68, 0.82), 0.14, 0.03);
    scene.fill(bare, primer);
  }
}

void paint_edge(Scene& scene) {
  const QPainterPath all = rectangle(0, 0, wide, 1);
  scene.fill_down(all, QColor(0x55, 0x55, 0x53), QColor(0x3a, 0x3a, 0x39));
  QPainterPath panel;
  panel.moveTo(-0.1, 1.1);
  panel.lineTo(0.5, -0.1);
  panel.lineTo(1.5, -0.1);
  panel.lineTo(1.5, 0.1);
  panel.cubicTo(1, 0.3, 0.7, 0.7, 0.55, 1.1);
  panel.closeSubpath();
  scene.fill_down(panel, scene.body(0.3), scene.body(-0.2));
  QPainterPath fold;
  fold.moveTo(0.2, 1.1);
  fold.cubicTo(0.4, 0.6, 0.7, 0.2, 1.3, -0.1);
  scene.line(fold, scene.body(0.55), 0.012);
  fold.translate(0.04, 0.02);
  scene.line(fold, scene.body(-0.45), 0.02);
  if (scene.wish().surface == Surface::Primed) {
    fold.translate(0.08, 0.02);
    scene.line(fold, tape, 0.07);
  }
  if (scene.sees(DefectKind::TapeLine)) scene.line(fold, scene.body(0.8), 0.008);
}

void paint_jamb(Scene& scene) {
  const QPainterPath all = rectangle(0, 0, wide, 1);
  scene.fill_down(all, scene.body(0.15), scene.body(-0.3));
  const QPainterPath opening = rectangle(0.52, 0.08, 1.2, 1.1, 0.16);
  scene.line(opening, scene.body(0.45), 0.05);
  scene.fill_down(opening, QColor(0x33, 0x31, 0x2e), QColor(0x4d, 0x4a, 0x45));
  scene.line(opening, rubber, 0.03);
  QPainterPath seam;
  seam.moveTo(0.3, -0.1);
  seam.cubicTo(0.26, 0.3, 0.34, 0.7, 0.28, 1.1);
  scene.line(seam, scene.body(-0.25), 0.03);
  scene.line(seam, scene.body(0.2), 0.016);
  for (const double y : {0.24, 0.7}) {
    scene.fill(rectangle(0.37, y, 0.12, 0.12, 0.015), scene.body(-0.1));
    scene.line(rectangle(0.37, y, 0.12, 0.12, 0.015), scene.body(-0.5), 0.006);
    for (const double down : {0.03, 0.09}) {
      scene.fill(circle(0.43, y + down, 0.018), QColor(0x8f, 0x8e, 0x88));
      scene.line(circle(0.43, y + down, 0.018), rubber, 0.004);
    }
  }
  scene.fill(rectangle(0.06, 0.4, 0.14, 0.2, 0.01), QColor(0xd8, 0xd6, 0xcc));
  for (int line = 0; line < 6; ++line)
    scene.fill(rectangle(0.075, 0.425 + line * 0.028, scene.at_random(0.06, 0.11), 0.01),
               QColor(0x55, 0x54, 0x50));
  if (scene.wish().surface == Surface::Primed) scene.line(seam, tape, 0.06);
}

void paint_gap(Scene& scene) {
  const QPainterPath all = rectangle(0, 0, wide, 1);
  scene.fill_down(all, scene.other(0.25), scene.other(-0.2));
  QPainterPath right = rectangle(0.7, -0.1, 1, 1.2);
  scene.fill_down(right, scene.body(0.3), scene.body(-0.25));
  scene.fill(rectangle(0.668, -0.1, 0.034, 1.2), QColor(0x1c, 0x1c, 0x1c));
  scene.fill(rectangle(0.702, -0.1, 0.008, 1.2), scene.body(0.6));
  scene.fill(rectangle(0.66, -0.1, 0.008, 1.2), scene.other(-0.4));
  scene.lamps(0.3, 0.3, 0.6);
  scale_strip(scene, 0.45, 0.55, 0.5);
}

void paint_label(Scene& scene) {
  const QPainterPath all = rectangle(0, 0, wide, 1);
  scene.fill_down(all, scene.other(0.15), scene.other(-0.2));
  scene.paint().save();
  scene.paint().translate(wide / 2, 0.5);
  scene.paint().rotate(scene.at_random(-5, 5));
  scene.fill(rectangle(-0.5, -0.27, 1, 0.54, 0.015), QColor(0xdc, 0xda, 0xd0));
  const std::wstring text(scene.wish().vin.begin(), scene.wish().vin.end());
  const auto bars = ZXing::MultiFormatWriter(ZXing::BarcodeFormat::Code39).encode(text, 1, 1);
  const double step = 0.92 / bars.width();
  for (int x = 0; x < bars.width(); ++x)
    if (bars.get(x, 0)) scene.fill(rectangle(-0.46 + x * step, 0.02, step, 0.18), rubber);
  for (int row = 0; row < 5; ++row) {
    const double y = -0.23 + row * 0.045;
    for (double x = -0.46; x < 0.2; x += 0.03)
      if (scene.at_random(0, 1) < 0.7)
        scene.fill(rectangle(x, y, scene.at_random(0.008, 0.024), 0.018), QColor(0x3c, 0x3b, 0x38));
  }
  scene.line(rectangle(0.27, -0.23, 0.19, 0.17), QColor(0x3c, 0x3b, 0x38), 0.005);
  scene.paint().restore();
}

void paint_inside(Scene& scene) {
  const QPainterPath all = rectangle(0, 0, wide, 1);
  scene.fill_down(all, QColor(0x6d, 0x72, 0x74), QColor(0x46, 0x47, 0x47));
  scene.fill(rectangle(0.05, 0.3, 1.24, 0.75, 0.12), QColor(0x34, 0x35, 0x35));
  for (const double x : {0.36, 0.74}) {
    scene.fill(circle(x, 0.5, 0.15), QColor(0x16, 0x17, 0x18));
    scene.line(circle(x, 0.5, 0.15), QColor(0x9a, 0x9c, 0x9c), 0.01);
    for (int tick = 0; tick < 11; ++tick) {
      scene.paint().save();
      scene.paint().translate(x, 0.5);
      scene.paint().rotate(-130 + tick * 26);
      scene.fill(rectangle(-0.004, -0.135, 0.008, 0.03), QColor(0xe8, 0xe6, 0xdc));
      scene.paint().restore();
    }
  }
  scene.line(circle(0.55, 1.0, 0.4), QColor(0x22, 0x22, 0x22), 0.06);
  scene.fill(rectangle(1, 0.36, 0.22, 0.3, 0.02), QColor(0xa7, 0xb4, 0xb5));
}

void paint_underneath(Scene& scene) {
  const QPainterPath all = rectangle(0, 0, wide, 1);
  scene.fill_down(all, QColor(0x7c, 0x7a, 0x73), QColor(0x57, 0x55, 0x50));
  for (int beam = 0; beam < 4; ++beam) {
    scene.fill(rectangle(-0.1, 0.08 + beam * 0.25, 1.6, 0.12, 0.02), QColor(0x66, 0x64, 0x5f));
    scene.line(rectangle(-0.1, 0.08 + beam * 0.25, 1.6, 0.12, 0.02), QColor(0x38, 0x37, 0x34),
               0.008);
    for (int hole = 0; hole < 6; ++hole)
      scene.fill(circle(0.1 + hole * 0.23, 0.14 + beam * 0.25, 0.025), QColor(0x26, 0x25, 0x23));
  }
  QPainterPath wax;
  wax.addEllipse(QPointF(scene.at_random(0.3, 1), 0.5), 0.2, 0.08);
  scene.fill(wax, QColor(0xb0, 0x8d, 0x4e));
}

}  // namespace jambline::demo
