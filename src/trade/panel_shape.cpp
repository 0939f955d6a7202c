#include "trade/panel_shape.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace jambline::trade {

namespace {
// The uppermost stretch that a vertical line has inside the outline.
struct Stretch {
  double low_mm;
  double high_mm;
};

constexpr double least_piece_mm2 = 2'000;  // slivers at rounded corners are nobody's business

std::optional<Stretch> top_stretch(const Polygon& outline, double x_mm) {
  std::vector<double> heights;
  const auto& corners = outline.corners;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Point_mm a = corners[i];
    const Point_mm b = corners[(i + 1) % corners.size()];
    if ((a.x_mm > x_mm) == (b.x_mm > x_mm)) continue;
    heights.push_back(a.y_mm + (b.y_mm - a.y_mm) * (x_mm - a.x_mm) / (b.x_mm - a.x_mm));
  }
  if (heights.size() < 2) return std::nullopt;
  std::sort(heights.begin(), heights.end());
  return Stretch{heights[heights.size() - 2], heights.back()};
}

void drop_straight_corners(std::vector<Point_mm>& corners) {
  std::vector<Point_mm> kept;
  for (const Point_mm& corner : corners) {
    while (kept.size() > 1 &&
           distance_to_segment_mm(kept.back(), kept[kept.size() - 2], corner) < 1e-6)
      kept.pop_back();
    if (kept.empty() || distance_mm(kept.back(), corner) > 0.05) kept.push_back(corner);
  }
  while (kept.size() > 1 && distance_mm(kept.back(), kept.front()) <= 0.05) kept.pop_back();
  corners = std::move(kept);
}

void flip(std::vector<Point_mm>& points, double width_mm) {
  for (Point_mm& point : points) point.x_mm = width_mm - point.x_mm;
}
}  // namespace

Point_mm beside_edge(const PanelShape& shape) {
  constexpr double aside_mm = 20;
  std::vector<Polyline> lines = shape.seams;
  for (const auto& edge : shape.masked_edges) lines.push_back(edge.line);
  lines.push_back(shape.outline.corners);
  std::stable_sort(
      lines.begin(), lines.begin() + static_cast<long>(shape.seams.size()),
      [](const Polyline& a, const Polyline& b) { return length_mm(a) > length_mm(b); });
  for (const Polyline& line : lines) {
    // From the middle of the line outwards, to either side of it.
    for (std::size_t step = 0; step + 1 < 2 * line.size(); ++step) {
      const std::size_t middle = (line.size() - 1) / 2;
      const std::size_t away = (step + 1) / 2;
      if (step % 2 == 0 ? middle + away + 1 >= line.size() : away > middle) continue;
      const std::size_t at = step % 2 == 0 ? middle + away : middle - away;
      const Point_mm a = line[at];
      const Point_mm b = line[at + 1];
      const double length = distance_mm(a, b);
      if (length < 1) continue;
      for (const double side : {aside_mm, -aside_mm}) {
        const Point_mm beside{(a.x_mm + b.x_mm) / 2 - (b.y_mm - a.y_mm) * side / length,
                              (a.y_mm + b.y_mm) / 2 + (b.x_mm - a.x_mm) * side / length};
        if (contains(shape.outline, beside)) return beside;
      }
    }
  }
  return shape.outline.corners.front();
}

PanelShape mirrored(const PanelShape& shape) {
  PanelShape out = shape;
  const double width_mm = shape.width_mm();
  const auto flip_polygon = [&](Polygon& polygon) {
    flip(polygon.corners, width_mm);
    std::reverse(polygon.corners.begin(), polygon.corners.end());
  };
  flip_polygon(out.outline);
  for (auto& edge : out.masked_edges) flip(edge.line, width_mm);
  for (auto& line : out.seams) flip(line, width_mm);
  for (auto& line : out.body_lines) flip(line, width_mm);
  for (auto& polygon : out.reach_over) flip_polygon(polygon);
  for (auto& polygon : out.glass) flip_polygon(polygon);
  return out;
}

std::vector<Polygon> edge_strip(const Polygon& outline, Side side, double depth_mm, double from_mm,
                                double to_mm) {
  const bool lower = side == Side::Lower;
  Polygon upright = outline;
  if (lower)
    for (Point_mm& corner : upright.corners) corner.y_mm = -corner.y_mm;

  // A hair on both sides of every corner, so that upright edges stay upright.
  std::vector<double> places{from_mm, to_mm};
  for (const Point_mm& corner : upright.corners)
    for (const double nudge_mm : {-0.01, 0.01}) places.push_back(corner.x_mm + nudge_mm);
  constexpr double step_mm = 20;
  const int steps = static_cast<int>(std::ceil((to_mm - from_mm) / step_mm));
  for (int i = 0; i < steps; ++i) places.push_back(from_mm + i * step_mm);
  std::sort(places.begin(), places.end());

  std::vector<Polygon> pieces;
  std::vector<Point_mm> upper;
  std::vector<Point_mm> under;
  std::optional<Stretch> before;
  const auto finish_piece = [&] {
    std::vector<Point_mm> corners = under;
    corners.insert(corners.end(), upper.rbegin(), upper.rend());
    under.clear();
    upper.clear();
    drop_straight_corners(corners);
    if (lower) {
      for (Point_mm& corner : corners) corner.y_mm = -corner.y_mm;
      std::reverse(corners.begin(), corners.end());
    }
    if (corners.size() > 2 && area_mm2({corners}) > least_piece_mm2)
      pieces.push_back({std::move(corners)});
  };
  for (const double x_mm : places) {
    if (x_mm < from_mm || x_mm > to_mm) continue;
    auto stretch = top_stretch(upright, x_mm);
    if (stretch) stretch->low_mm = std::max(stretch->low_mm, stretch->high_mm - depth_mm);
    const bool joined = stretch && before && stretch->low_mm <= before->high_mm &&
                        before->low_mm <= stretch->high_mm;
    if (before && !joined) finish_piece();
    before = stretch;
    if (!stretch) continue;
    upper.push_back({x_mm, stretch->high_mm});
    under.push_back({x_mm, stretch->low_mm});
  }
  finish_piece();
  return pieces;
}

}  // namespace jambline::trade
