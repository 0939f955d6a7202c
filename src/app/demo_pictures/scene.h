// app/demo_pictures/scene.h: what the drawings of all views have in common: a painter in parts of
// the picture's height, the car's color under the shop's lamps, and chance.
#pragma once

#include <QColor>
#include <QPainter>
#include <QPainterPath>
#include <random>

#include "app/demo/camera.h"

namespace jambline::demo {

inline constexpr double wide = 4.0 / 3;  // the picture is 1 high

class Scene {
 public:
  Scene(QPainter& painter, const PictureWish& wish);

  QPainter& paint() { return painter_; }
  const PictureWish& wish() const { return wish_; }
  double at_random(double from, double to) {
    return std::uniform_real_distribution<double>(from, to)(random_);
  }
  bool sees(job::DefectKind kind) const;

  QColor body(double light = 0) const;   // of the painted panel; light -1 to 1
  QColor other(double light = 0) const;  // of the car's other panels
  void fill(const QPainterPath& path, const QColor& color);
  void fill_down(const QPainterPath& path, const QColor& top, const QColor& bottom);
  void line(const QPainterPath& path, const QColor& color, double width);
  void room();                                      // wall, floor and lamps behind a car
  void lamps(double x, double y, double length);    // tubes that shine back from the paint
  void surface(double x, double y, double extent);  // marks, damage or primer around a place

 private:
  void mark(job::DefectKind kind, double x, double y);

  QPainter& painter_;
  const PictureWish& wish_;
  std::minstd_rand random_;
};

// One view each.
void paint_corner(Scene& scene, bool front, bool left);
void paint_panel(Scene& scene);
void paint_close(Scene& scene, bool side_light);
void paint_edge(Scene& scene);
void paint_jamb(Scene& scene);
void paint_gap(Scene& scene);
void paint_label(Scene& scene);
void paint_inside(Scene& scene);
void paint_underneath(Scene& scene);

}  // namespace jambline::demo
