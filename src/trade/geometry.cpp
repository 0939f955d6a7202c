#include "trade/geometry.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace jambline::trade {

namespace {
double cross(Point_mm o, Point_mm a, Point_mm b) {
  return (a.x_mm - o.x_mm) * (b.y_mm - o.y_mm) - (a.y_mm - o.y_mm) * (b.x_mm - o.x_mm);
}

bool in_box(Point_mm point, Point_mm a, Point_mm b) {
  return point.x_mm >= std::min(a.x_mm, b.x_mm) && point.x_mm <= std::max(a.x_mm, b.x_mm) &&
         point.y_mm >= std::min(a.y_mm, b.y_mm) && point.y_mm <= std::max(a.y_mm, b.y_mm);
}

int sign(double value) {
  return (value > 0) - (value < 0);
}

bool touch(Point_mm a, Point_mm b, Point_mm c, Point_mm d) {
  const int abc = sign(cross(a, b, c));
  const int abd = sign(cross(a, b, d));
  const int cda = sign(cross(c, d, a));
  const int cdb = sign(cross(c, d, b));
  if (abc * abd < 0 && cda * cdb < 0) return true;
  return (abc == 0 && in_box(c, a, b)) || (abd == 0 && in_box(d, a, b)) ||
         (cda == 0 && in_box(a, c, d)) || (cdb == 0 && in_box(b, c, d));
}

Point_mm turned(Point_mm point, int quarter_turns) {
  switch (((quarter_turns % 4) + 4) % 4) {
    case 1:
      return {-point.y_mm, point.x_mm};
    case 2:
      return {-point.x_mm, -point.y_mm};
    case 3:
      return {point.y_mm, -point.x_mm};
    default:
      return point;
  }
}

Point_mm turned_deg(Point_mm point, double deg) {
  if (deg == 0) return point;
  const double angle = deg * 3.14159265358979323846 / 180;
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  return {c * point.x_mm - s * point.y_mm, s * point.x_mm + c * point.y_mm};
}
}  // namespace

double signed_area_mm2(const Polygon& polygon) {
  const auto& corners = polygon.corners;
  double twice = 0;
  for (std::size_t i = 0; i < corners.size(); ++i)
    twice += cross(corners.front(), corners[i], corners[(i + 1) % corners.size()]);
  return twice / 2;
}

double area_mm2(const Polygon& polygon) {
  return std::abs(signed_area_mm2(polygon));
}

double length_mm(const Polyline& line) {
  double sum = 0;
  for (std::size_t i = 1; i < line.size(); ++i) sum += distance_mm(line[i - 1], line[i]);
  return sum;
}

Box_mm bounds(const std::vector<Point_mm>& points) {
  if (points.empty()) return {};
  Box_mm box{points.front(), points.front()};
  for (const Point_mm& point : points) box = joined(box, {point, point});
  return box;
}

Box_mm joined(const Box_mm& a, const Box_mm& b) {
  return {{std::min(a.low.x_mm, b.low.x_mm), std::min(a.low.y_mm, b.low.y_mm)},
          {std::max(a.high.x_mm, b.high.x_mm), std::max(a.high.y_mm, b.high.y_mm)}};
}

bool contains(const Polygon& polygon, Point_mm point) {
  const auto& corners = polygon.corners;
  if (corners.size() < 3) return false;
  bool inside = false;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Point_mm a = corners[i];
    const Point_mm b = corners[(i + 1) % corners.size()];
    const double side = cross(a, b, point);
    if (side == 0 && in_box(point, a, b)) return true;
    if ((a.y_mm > point.y_mm) != (b.y_mm > point.y_mm) && (side > 0) == (b.y_mm > a.y_mm))
      inside = !inside;
  }
  return inside;
}

double distance_mm(Point_mm a, Point_mm b) {
  return std::hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm);
}

double distance_to_segment_mm(Point_mm point, Point_mm from, Point_mm to) {
  const double dx = to.x_mm - from.x_mm;
  const double dy = to.y_mm - from.y_mm;
  const double square = dx * dx + dy * dy;
  if (square == 0) return distance_mm(point, from);
  const double share = std::clamp(
      ((point.x_mm - from.x_mm) * dx + (point.y_mm - from.y_mm) * dy) / square, 0.0, 1.0);
  return distance_mm(point, {from.x_mm + share * dx, from.y_mm + share * dy});
}

double distance_to_line_mm(Point_mm point, const Polyline& line) {
  double least = std::numeric_limits<double>::infinity();
  if (line.size() == 1) return distance_mm(point, line.front());
  for (std::size_t i = 1; i < line.size(); ++i)
    least = std::min(least, distance_to_segment_mm(point, line[i - 1], line[i]));
  return least;
}

double distance_to_edge_mm(Point_mm point, const Polygon& polygon) {
  double least = distance_to_line_mm(point, polygon.corners);
  if (polygon.corners.size() > 2)
    least = std::min(
        least, distance_to_segment_mm(point, polygon.corners.back(), polygon.corners.front()));
  return least;
}

double gap_mm(const Polygon& a, const Polygon& b) {
  if (a.corners.empty() || b.corners.empty()) return std::numeric_limits<double>::infinity();
  if (contains(a, b.corners.front()) || contains(b, a.corners.front())) return 0;
  const std::size_t n = a.corners.size();
  const std::size_t m = b.corners.size();
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = 0; j < m; ++j)
      if (touch(a.corners[i], a.corners[(i + 1) % n], b.corners[j], b.corners[(j + 1) % m]))
        return 0;
  for (const Point_mm& corner : a.corners) least = std::min(least, distance_to_edge_mm(corner, b));
  for (const Point_mm& corner : b.corners) least = std::min(least, distance_to_edge_mm(corner, a));
  return least;
}

bool crosses_itself(const Polygon& polygon) {
  const auto& corners = polygon.corners;
  const std::size_t n = corners.size();
  if (n < 3) return true;
  for (std::size_t i = 0; i < n; ++i) {
    const Point_mm a = corners[i];
    const Point_mm b = corners[(i + 1) % n];
    const Point_mm c = corners[(i + 2) % n];
    if (a == b) return true;
    const double ahead =
        (b.x_mm - a.x_mm) * (c.x_mm - b.x_mm) + (b.y_mm - a.y_mm) * (c.y_mm - b.y_mm);
    if (cross(a, b, c) == 0 && ahead < 0) return true;
    for (std::size_t j = i + 2; j < n; ++j) {
      if (i == 0 && j == n - 1) continue;
      if (touch(a, b, corners[j], corners[(j + 1) % n])) return true;
    }
  }
  return false;
}

Point_mm Placement::apply(Point_mm point) const {
  if (mirrored) point.x_mm = -point.x_mm;
  point = turned_deg(turned(point, quarter_turns), turn_deg);
  return {point.x_mm + shift.x_mm, point.y_mm + shift.y_mm};
}

Point_mm Placement::back(Point_mm point) const {
  point = {point.x_mm - shift.x_mm, point.y_mm - shift.y_mm};
  point = turned(turned_deg(point, -turn_deg), -quarter_turns);
  if (mirrored) point.x_mm = -point.x_mm;
  return point;
}

std::vector<Point_mm> Placement::apply(const std::vector<Point_mm>& points) const {
  std::vector<Point_mm> out;
  out.reserve(points.size());
  for (const Point_mm& point : points) out.push_back(apply(point));
  return out;
}

Polygon Placement::apply(const Polygon& polygon) const {
  return {apply(polygon.corners)};
}

}  // namespace jambline::trade
