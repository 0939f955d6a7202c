// trade/points.h: how points lie on a flat piece: spacing, groups, and a place to draw them anew.
//
// Spacing: mean distance to the nearest neighbour and the index of Clark and Evans 1954, R = seen /
//          (0.5 / sqrt(n / area)), without correction for edges; Donnelly's 1978 corrected mean for
//          a rectangle. R under 1: clustered.
// Groups:  DBSCAN, Ester et al. 1996: a core point has min_points within eps, itself counted.
// Units:   any, but the same throughout. Errors: none; fewer than two points have no spacing (0).
// Threads: pure.
#pragma once

#include <vector>

#include "trade/draws.h"
#include "trade/geometry.h"

namespace jambline::trade {

std::vector<double> nearest_distances(const std::vector<Point_mm>& points);
double mean_nearest(const std::vector<Point_mm>& points);
double clark_evans_index(const std::vector<Point_mm>& points, double area);
double donnelly_index(const std::vector<Point_mm>& points, double area, double perimeter);

inline constexpr int no_group = -1;
// A group number a point, from 0 in the order of their first points.
std::vector<int> dbscan_groups(const std::vector<Point_mm>& points, double eps, int min_points);

// Even chance over an outline, made of the triangles it is cut into.
class PointsInside {
 public:
  explicit PointsInside(const Polygon& outline);
  Point_mm draw(Draws& draws) const;
  double area() const { return sums_.empty() ? 0 : sums_.back(); }

 private:
  struct Triangle {
    Point_mm a, b, c;
  };
  std::vector<Triangle> triangles_;
  std::vector<double> sums_;
};

}  // namespace jambline::trade
