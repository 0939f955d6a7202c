#include "trade/points.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace jambline::trade {

namespace {
double squared(Point_mm a, Point_mm b) {
  const double x = a.x_mm - b.x_mm;
  const double y = a.y_mm - b.y_mm;
  return x * x + y * y;
}

double turn(Point_mm a, Point_mm b, Point_mm c) {
  return (b.x_mm - a.x_mm) * (c.y_mm - a.y_mm) - (b.y_mm - a.y_mm) * (c.x_mm - a.x_mm);
}
}  // namespace

std::vector<double> nearest_distances(const std::vector<Point_mm>& points) {
  std::vector<double> out(points.size(),
                          points.size() < 2 ? 0 : std::numeric_limits<double>::infinity());
  for (std::size_t i = 0; i < points.size(); ++i)
    for (std::size_t j = i + 1; j < points.size(); ++j) {
      const double apart = squared(points[i], points[j]);
      out[i] = std::min(out[i], apart);
      out[j] = std::min(out[j], apart);
    }
  for (double& one : out) one = std::sqrt(one);
  return out;
}

double mean_nearest(const std::vector<Point_mm>& points) {
  if (points.size() < 2) return 0;
  const auto all = nearest_distances(points);
  return std::accumulate(all.begin(), all.end(), 0.0) / static_cast<double>(all.size());
}

double clark_evans_index(const std::vector<Point_mm>& points, double area) {
  return mean_nearest(points) / (0.5 / std::sqrt(static_cast<double>(points.size()) / area));
}

double donnelly_index(const std::vector<Point_mm>& points, double area, double perimeter) {
  const double n = static_cast<double>(points.size());
  return mean_nearest(points) /
         (0.5 * std::sqrt(area / n) + (0.0514 + 0.0412 / std::sqrt(n)) * perimeter / n);
}

std::vector<int> dbscan_groups(const std::vector<Point_mm>& points, double eps, int min_points) {
  const std::size_t n = points.size();
  std::vector<std::vector<std::size_t>> near(n);
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = 0; j < n; ++j)
      if (squared(points[i], points[j]) <= eps * eps) near[i].push_back(j);
  const auto core = [&](std::size_t i) { return static_cast<int>(near[i].size()) >= min_points; };
  std::vector<int> group(n, no_group);
  int next = 0;
  for (std::size_t i = 0; i < n; ++i) {
    if (group[i] != no_group || !core(i)) continue;
    std::vector<std::size_t> open{i};
    group[i] = next;
    while (!open.empty()) {
      const std::size_t at = open.back();
      open.pop_back();
      if (!core(at)) continue;
      for (const std::size_t other : near[at]) {
        if (group[other] != no_group) continue;
        group[other] = next;
        open.push_back(other);
      }
    }
    ++next;
  }
  return group;
}

// Cuts ears off; outlines of panels have tens of corners.
PointsInside::PointsInside(const Polygon& outline) {
  std::vector<Point_mm> left = outline.corners;
  if (signed_area_mm2(outline) < 0) std::reverse(left.begin(), left.end());
  const auto is_ear = [&](std::size_t i) {
    const Point_mm a = left[(i + left.size() - 1) % left.size()];
    const Point_mm b = left[i];
    const Point_mm c = left[(i + 1) % left.size()];
    if (turn(a, b, c) <= 0) return false;
    return std::none_of(left.begin(), left.end(), [&](const Point_mm& p) {
      if (p == a || p == b || p == c) return false;
      return turn(a, b, p) >= 0 && turn(b, c, p) >= 0 && turn(c, a, p) >= 0;
    });
  };
  while (left.size() >= 3) {
    std::size_t ear = 0;
    while (ear < left.size() && !is_ear(ear)) ++ear;
    if (ear == left.size()) ear = 0;  // only slivers without area are left
    const Triangle cut{left[(ear + left.size() - 1) % left.size()], left[ear],
                       left[(ear + 1) % left.size()]};
    const double area = turn(cut.a, cut.b, cut.c) / 2;
    if (area > 0) {
      sums_.push_back((sums_.empty() ? 0 : sums_.back()) + area);
      triangles_.push_back(cut);
    }
    left.erase(left.begin() + static_cast<std::ptrdiff_t>(ear));
  }
}

Point_mm PointsInside::draw(Draws& draws) const {
  const double at = draws.unit() * sums_.back();
  const auto found = std::upper_bound(sums_.begin(), sums_.end(), at);
  const auto place = std::min<std::ptrdiff_t>(found - sums_.begin(),
                                              static_cast<std::ptrdiff_t>(sums_.size()) - 1);
  const Triangle& in = triangles_[static_cast<std::size_t>(place)];
  double u = draws.unit();
  double v = draws.unit();
  if (u + v > 1) {
    u = 1 - u;
    v = 1 - v;
  }
  return {in.a.x_mm + u * (in.b.x_mm - in.a.x_mm) + v * (in.c.x_mm - in.a.x_mm),
          in.a.y_mm + u * (in.b.y_mm - in.a.y_mm) + v * (in.c.y_mm - in.a.y_mm)};
}

}  // namespace jambline::trade
