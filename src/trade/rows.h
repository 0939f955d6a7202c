// trade/rows.h: an area of a panel as thin rows, each with the stretches that it covers.
//
// Shape:   rows of one height from the low edge of a box up; each stands for its middle line, along
//          which stretches are exact. Two areas are combined only when made for the same box and
//          height.
// Cost:    what is added costs the rows that it touches, a logarithm for sorting on top.
// Errors:  none; an outline under three corners and an empty line add nothing. Threads: plain
//          values.
#pragma once

#include <span>
#include <utility>
#include <vector>

#include "trade/geometry.h"

namespace jambline::trade {

class Rows {
 public:
  Rows(const Box_mm& box, double height_mm);

  // Each adds to what is covered already.
  void add_inside(const Polygon& outline);
  void add_near(const Polyline& line, double within_mm);
  void add_near_edge(const Polygon& outline, double within_mm);
  void add_circle(Point_mm center, double radius_mm);

  // Puts what was added in order; asked for by circles_mm2, done by the others as they go.
  void join();

  double area_mm2() const;
  double common_area_mm2(const Rows& other) const;
  Rows without(const Rows& other) const;
  // What each circle about one center has of it, after join(). A circle that is covered whole has
  // the same area wherever its center lies between two rows.
  void circles_mm2(Point_mm center, std::span<const double> radii_mm,
                   std::span<double> areas_mm2) const;

 private:
  struct Stretch {
    double from, to;
  };
  using Row = std::vector<Stretch>;

  double middle(std::size_t row) const;
  // The rows whose middle lies in [from, to], first and one past the last.
  std::pair<std::size_t, std::size_t> between(double from, double to) const;
  void add_near(Point_mm a, Point_mm b, double within_mm);
  static Row joined(Row row);

  double low_mm_;
  double height_mm_;
  std::vector<Row> rows_;
};

}  // namespace jambline::trade
