// trade/geometry.h: points, lines and outlines on a flat panel, in millimetres.
//
// Shape:   a Polygon is closed (last corner joins the first) and simple; this program writes its
//          own outlines counter-clockwise with y up, and no function here needs that order.
// Edges:   a point on the boundary counts as inside.
// Errors:  none; an empty line is infinitely far away, an outline under three corners has no
// inside. Threads: plain values, pure functions.
#pragma once

#include <vector>

#include "base/describe.h"

namespace jambline::trade {

struct Point_mm {
  double x_mm{};
  double y_mm{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "x_mm", .unit = "mm", .doc = "to the right"}, self.x_mm);
    visit(Field{.name = "y_mm", .unit = "mm", .doc = "up"}, self.y_mm);
  }
  friend bool operator==(const Point_mm&, const Point_mm&) = default;
};

using Polyline = std::vector<Point_mm>;

struct Polygon {
  std::vector<Point_mm> corners;
  friend bool operator==(const Polygon&, const Polygon&) = default;
};

struct Box_mm {
  Point_mm low;
  Point_mm high;
  double width_mm() const { return high.x_mm - low.x_mm; }
  double height_mm() const { return high.y_mm - low.y_mm; }
  friend bool operator==(const Box_mm&, const Box_mm&) = default;
};

double area_mm2(const Polygon& polygon);         // never negative
double signed_area_mm2(const Polygon& polygon);  // positive when counter-clockwise with y up
double length_mm(const Polyline& line);
Box_mm bounds(const std::vector<Point_mm>& points);  // all zero when empty
Box_mm joined(const Box_mm& a, const Box_mm& b);

bool contains(const Polygon& polygon, Point_mm point);
double distance_mm(Point_mm a, Point_mm b);
double distance_to_segment_mm(Point_mm point, Point_mm from, Point_mm to);
double distance_to_line_mm(Point_mm point, const Polyline& line);
double distance_to_edge_mm(Point_mm point, const Polygon& polygon);  // of the boundary, also inside
// Zero when they touch, cross, or one holds the other.
double gap_mm(const Polygon& a, const Polygon& b);

// True when two edges that are not neighbours touch or cross, when neighbours fold back on each
// other, or when a corner stands twice in a row.
bool crosses_itself(const Polygon& polygon);

// How a panel lies on the pattern: first mirrored (x -> -x, where asked), then turned
// counter-clockwise, then shifted. A placement with whole quarter turns moves points by exact
// additions only; `turn_deg` is for what is not square.
// back(apply(p)) == p within the rounding of the shift (under 1e-9 mm for coordinates below 1 km).
struct Placement {
  bool mirrored = false;
  int quarter_turns = 0;  // counter-clockwise, any whole number
  double turn_deg = 0;    // on top of the quarter turns
  Point_mm shift;

  Point_mm apply(Point_mm point) const;
  Point_mm back(Point_mm point) const;
  std::vector<Point_mm> apply(const std::vector<Point_mm>& points) const;
  Polygon apply(const Polygon& polygon) const;  // keeps the corners' order, also when mirrored
  friend bool operator==(const Placement&, const Placement&) = default;
};

}  // namespace jambline::trade
