#include "job/body_shape_draw.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace jambline::job::draw {

using trade::Point_mm;
using trade::Polygon;
using trade::Polyline;

namespace {
constexpr double most_stroke_mm = 32;
constexpr double degree = 3.14159265358979323846 / 180;

Point_mm between(Point_mm a, Point_mm b, double share) {
  return {a.x_mm + share * (b.x_mm - a.x_mm), a.y_mm + share * (b.y_mm - a.y_mm)};
}

// Takes `length_mm` off the end of a line.
void shorten(Polyline& line, double length_mm) {
  while (line.size() > 1) {
    const double last_mm = trade::distance_mm(line.back(), line[line.size() - 2]);
    if (last_mm > length_mm) {
      line.back() = between(line.back(), line[line.size() - 2], length_mm / last_mm);
      return;
    }
    length_mm -= last_mm;
    line.pop_back();
  }
}

void move(std::vector<Point_mm>& points, Point_mm by) {
  for (Point_mm& point : points) point = {point.x_mm - by.x_mm, point.y_mm - by.y_mm};
}

void append(Polyline& line, const Polyline& more) {
  for (const Point_mm& point : more)
    if (line.empty() || trade::distance_mm(line.back(), point) > 1e-6) line.push_back(point);
}
}  // namespace

Polyline curve_points(Point_mm from, Point_mm leave, Point_mm arrive, Point_mm end) {
  const double rough_mm = trade::distance_mm(from, leave) + trade::distance_mm(leave, arrive) +
                          trade::distance_mm(arrive, end);
  const int steps = std::max(4, static_cast<int>(std::ceil(rough_mm / (most_stroke_mm * 0.7))));
  Polyline points;
  for (int i = 0; i <= steps; ++i) {
    const double t = static_cast<double>(i) / steps;
    const Point_mm a = between(from, leave, t);
    const Point_mm b = between(leave, arrive, t);
    const Point_mm c = between(arrive, end, t);
    points.push_back(between(between(a, b, t), between(b, c, t), t));
  }
  points.front() = from;
  points.back() = end;
  return points;
}

Outline::Outline(double x_mm, double y_mm, double round_mm)
    : start_{x_mm, y_mm}, start_round_mm_(round_mm) {}

Outline& Outline::add(Polyline points, double round_mm) {
  strokes_.push_back({std::move(points), round_mm});
  return *this;
}

Outline& Outline::line(double x_mm, double y_mm, double round_mm) {
  const Point_mm from = strokes_.empty() ? start_ : strokes_.back().points.back();
  return add({from, {x_mm, y_mm}}, round_mm);
}

Outline& Outline::bow(double x_mm, double y_mm, double bulge_mm, double round_mm) {
  const Point_mm from = strokes_.empty() ? start_ : strokes_.back().points.back();
  const double chord_mm = trade::distance_mm(from, {x_mm, y_mm});
  const Point_mm out{(y_mm - from.y_mm) / chord_mm, -(x_mm - from.x_mm) / chord_mm};
  const int steps = std::max(6, static_cast<int>(std::ceil(chord_mm / most_stroke_mm)) + 1);
  Polyline points;
  for (int i = 0; i <= steps; ++i) {
    const double t = static_cast<double>(i) / steps;
    const Point_mm base = between(from, {x_mm, y_mm}, t);
    const double lift_mm = 4 * bulge_mm * t * (1 - t);
    points.push_back({base.x_mm + lift_mm * out.x_mm, base.y_mm + lift_mm * out.y_mm});
  }
  points.front() = from;
  points.back() = {x_mm, y_mm};
  return add(std::move(points), round_mm);
}

Outline& Outline::curve(Point_mm leave, Point_mm arrive, Point_mm end, double round_mm) {
  const Point_mm from = strokes_.empty() ? start_ : strokes_.back().points.back();
  return add(curve_points(from, leave, arrive, end), round_mm);
}

Outline& Outline::arch(Point_mm center, double rx_mm, double ry_mm, double from_deg, double to_deg,
                       double round_mm) {
  const auto at = [&](double deg) {
    return Point_mm{center.x_mm + rx_mm * std::cos(deg * degree),
                    center.y_mm + ry_mm * std::sin(deg * degree)};
  };
  const Point_mm first = at(from_deg);
  line(first.x_mm, first.y_mm, round_mm);
  const double length_mm = std::abs(to_deg - from_deg) * degree * std::max(rx_mm, ry_mm);
  const int steps = std::max(6, static_cast<int>(std::ceil(length_mm / most_stroke_mm)));
  Polyline points;
  for (int i = 0; i <= steps; ++i)
    points.push_back(at(from_deg + (to_deg - from_deg) * static_cast<double>(i) / steps));
  return add(std::move(points), round_mm);
}

Outline& Outline::masked(std::string name) {
  strokes_.back().masked = std::move(name);
  return *this;
}

Outline& Outline::seam() {
  strokes_.back().seam = true;
  return *this;
}

void Outline::mirror(bool across_x, double axis_mm) {
  const auto flip = [&](Point_mm point) {
    return across_x ? Point_mm{2 * axis_mm - point.x_mm, point.y_mm}
                    : Point_mm{point.x_mm, 2 * axis_mm - point.y_mm};
  };
  const std::size_t half = strokes_.size();
  for (std::size_t i = half; i-- > 0;) {
    Stroke stroke = strokes_[i];
    std::reverse(stroke.points.begin(), stroke.points.end());
    for (Point_mm& point : stroke.points) point = flip(point);
    stroke.round_mm = i > 0 ? strokes_[i - 1].round_mm : start_round_mm_;
    strokes_.push_back(std::move(stroke));
  }
  for (auto line : std::vector(body_lines_)) {
    for (Point_mm& point : line) point = flip(point);
    body_lines_.push_back(std::move(line));
  }
}

Outline& Outline::mirror_x(double axis_mm) {
  mirror(true, axis_mm);
  return *this;
}

Outline& Outline::mirror_y(double axis_mm) {
  mirror(false, axis_mm);
  return *this;
}

Outline& Outline::body_line(Polyline line) {
  body_lines_.push_back(std::move(line));
  return *this;
}

Outline& Outline::glass(Polygon polygon) {
  glass_.push_back(std::move(polygon));
  return *this;
}

std::vector<Outline::Stroke> Outline::rounded() const {
  std::vector<Stroke> strokes = strokes_;
  if (trade::distance_mm(strokes.back().points.back(), start_) > 1e-6)
    strokes.push_back({{strokes.back().points.back(), start_}, start_round_mm_});
  else
    strokes.back().round_mm = start_round_mm_;

  const std::size_t n = strokes.size();
  std::vector<double> lengths_mm;
  lengths_mm.reserve(n);
  for (const Stroke& stroke : strokes) lengths_mm.push_back(trade::length_mm(stroke.points));
  std::vector<Stroke> out;
  std::vector<Stroke> corners(n);
  for (std::size_t i = 0; i < n; ++i) {
    Stroke& one = strokes[i];
    Stroke& two = strokes[(i + 1) % n];
    const double cut_mm =
        std::min({one.round_mm, lengths_mm[i] * 0.48, lengths_mm[(i + 1) % n] * 0.48});
    if (cut_mm < 1) continue;
    const Point_mm corner = one.points.back();
    shorten(one.points, cut_mm);
    std::reverse(two.points.begin(), two.points.end());
    shorten(two.points, cut_mm);
    std::reverse(two.points.begin(), two.points.end());
    corners[i].points = curve_points(one.points.back(), between(one.points.back(), corner, 0.6),
                                     between(two.points.front(), corner, 0.6), two.points.front());
    if (one.masked == two.masked) corners[i].masked = one.masked;
    corners[i].seam = one.seam && two.seam;
  }
  for (std::size_t i = 0; i < n; ++i) {
    out.push_back(std::move(strokes[i]));
    if (!corners[i].points.empty()) out.push_back(std::move(corners[i]));
  }
  return out;
}

Point_mm Outline::corner() const {
  Polyline all;
  for (const Stroke& stroke : rounded()) append(all, stroke.points);
  return trade::bounds(all).low;
}

trade::PanelShape Outline::shape(trade::Attitude attitude, trade::Substrate substrate) const {
  trade::PanelShape out;
  out.attitude = attitude;
  out.substrate = substrate;
  const std::string* masked_before = nullptr;
  bool seam_before = false;
  const std::vector<Stroke> strokes = rounded();
  for (const Stroke& stroke : strokes) {
    append(out.outline.corners, stroke.points);
    if (!stroke.masked.empty()) {
      if (!masked_before || *masked_before != stroke.masked)
        out.masked_edges.push_back({stroke.masked, {}});
      append(out.masked_edges.back().line, stroke.points);
    }
    if (stroke.seam) {
      if (!seam_before) out.seams.emplace_back();
      append(out.seams.back(), stroke.points);
    }
    masked_before = &stroke.masked;
    seam_before = stroke.seam;
  }
  auto& corners = out.outline.corners;
  while (trade::distance_mm(corners.front(), corners.back()) < 1e-6) corners.pop_back();
  // An edge that runs through the first corner comes in two halves.
  if (out.masked_edges.size() > 1 && strokes.front().masked == strokes.back().masked &&
      !strokes.front().masked.empty()) {
    Polyline joined = out.masked_edges.back().line;
    append(joined, out.masked_edges.front().line);
    out.masked_edges.front().line = std::move(joined);
    out.masked_edges.pop_back();
  }

  out.body_lines = body_lines_;
  out.glass = glass_;
  const Point_mm low = trade::bounds(corners).low;
  move(corners, low);
  for (auto& edge : out.masked_edges) move(edge.line, low);
  for (auto& line : out.seams) move(line, low);
  for (auto& line : out.body_lines) move(line, low);
  for (auto& polygon : out.glass) move(polygon.corners, low);
  return out;
}

Polygon rounded(const Polygon& polygon, double round_mm) {
  Outline outline(polygon.corners.front().x_mm, polygon.corners.front().y_mm, round_mm);
  for (std::size_t i = 1; i < polygon.corners.size(); ++i)
    outline.line(polygon.corners[i].x_mm, polygon.corners[i].y_mm, round_mm);
  const Point_mm low = outline.corner();
  Polygon out = outline.shape(trade::Attitude::Upright).outline;
  move(out.corners, {-low.x_mm, -low.y_mm});
  return out;
}

void Layout::left(Panel panel, trade::PanelShape shape, double along_mm, double bottom_mm,
                  bool often_off) {
  pattern_.panels.push_back(
      {panel, std::move(shape), {false, -1, 0, {-bottom_mm, -along_mm}}, often_off});
}

void Layout::right(Panel panel, const trade::PanelShape& shape, double along_mm, double bottom_mm,
                   bool often_off) {
  pattern_.panels.push_back({panel,
                             trade::mirrored(shape),
                             {false, 1, 0, {bottom_mm, -along_mm - shape.width_mm()}},
                             often_off});
}

void Layout::pair(Panel left_panel, Panel right_panel, const trade::PanelShape& shape,
                  double along_mm, double bottom_mm, bool often_off) {
  left(left_panel, shape, along_mm, bottom_mm, often_off);
  right(right_panel, shape, along_mm, bottom_mm, often_off);
}

void Layout::lengthwise(Panel panel, trade::PanelShape shape, double along_mm, bool often_off) {
  const double half_mm = shape.height_mm() / 2;
  left(panel, std::move(shape), along_mm, half_mm, often_off);
}

void Layout::rearward(Panel panel, trade::PanelShape shape, double along_mm, bool often_off,
                      double middle_mm) {
  const Point_mm shift{middle_mm - shape.width_mm() / 2, -along_mm - shape.height_mm()};
  pattern_.panels.push_back({panel, std::move(shape), {false, 0, 0, shift}, often_off});
}

void Layout::frontward(Panel panel, trade::PanelShape shape, double along_mm, bool often_off) {
  const Point_mm shift{shape.width_mm() / 2, shape.height_mm() - along_mm};
  pattern_.panels.push_back({panel, std::move(shape), {false, 2, 0, shift}, often_off});
}

void Layout::glass(const std::vector<Point_mm>& half, double round_mm) {
  Polygon polygon;
  for (const Point_mm& point : half) polygon.corners.push_back({point.x_mm, -point.y_mm});
  for (auto point = half.rbegin(); point != half.rend(); ++point)
    if (point->x_mm != 0) polygon.corners.push_back({-point->x_mm, -point->y_mm});
  if (trade::signed_area_mm2(polygon) < 0)
    std::reverse(polygon.corners.begin(), polygon.corners.end());
  pattern_.glass.push_back(rounded(polygon, round_mm));
}

CarPattern Layout::done(const std::vector<Panel>& walk) const {
  CarPattern out = pattern_;
  const auto place = [&](const PatternPanel& one) {
    return std::find(walk.begin(), walk.end(), one.panel) - walk.begin();
  };
  std::stable_sort(out.panels.begin(), out.panels.end(),
                   [&](const auto& a, const auto& b) { return place(a) < place(b); });
  Polyline all;
  for (const PatternPanel& one : out.panels) {
    const auto placed = one.place.apply(one.shape.outline).corners;
    all.insert(all.end(), placed.begin(), placed.end());
    for (const Polygon& glass : one.shape.glass) {
      const auto corners = one.place.apply(glass).corners;
      all.insert(all.end(), corners.begin(), corners.end());
    }
  }
  for (const Polygon& glass : out.glass)
    all.insert(all.end(), glass.corners.begin(), glass.corners.end());
  const Point_mm low = trade::bounds(all).low;
  for (PatternPanel& one : out.panels)
    one.place.shift = {one.place.shift.x_mm - low.x_mm, one.place.shift.y_mm - low.y_mm};
  for (Polygon& glass : out.glass) move(glass.corners, low);
  move(all, low);
  out.bounds = trade::bounds(all);
  return out;
}

}  // namespace jambline::job::draw
