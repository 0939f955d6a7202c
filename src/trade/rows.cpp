#include "trade/rows.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace jambline::trade {

Rows::Rows(const Box_mm& box, double height_mm)
    : low_mm_(box.low.y_mm),
      height_mm_(height_mm),
      rows_(static_cast<std::size_t>(std::ceil(box.height_mm() / height_mm))) {}

double Rows::middle(std::size_t row) const {
  return low_mm_ + (static_cast<double>(row) + 0.5) * height_mm_;
}

std::pair<std::size_t, std::size_t> Rows::between(double from, double to) const {
  const auto count = static_cast<double>(rows_.size());
  const double first = std::clamp(std::ceil((from - low_mm_) / height_mm_ - 0.5), 0.0, count);
  const double end = std::clamp(std::floor((to - low_mm_) / height_mm_ - 0.5) + 1, first, count);
  return {static_cast<std::size_t>(first), static_cast<std::size_t>(end)};
}

void Rows::add_inside(const Polygon& outline) {
  const auto& corners = outline.corners;
  if (corners.size() < 3) return;
  std::vector<std::vector<double>> crossings(rows_.size());
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Point_mm& a = corners[i];
    const Point_mm& b = corners[(i + 1) % corners.size()];
    const auto [first, end] = between(std::min(a.y_mm, b.y_mm), std::max(a.y_mm, b.y_mm));
    for (std::size_t row = first; row < end; ++row) {
      const double y = middle(row);
      if ((a.y_mm <= y) == (b.y_mm <= y)) continue;
      crossings[row].push_back(a.x_mm + (b.x_mm - a.x_mm) * (y - a.y_mm) / (b.y_mm - a.y_mm));
    }
  }
  for (std::size_t row = 0; row < rows_.size(); ++row) {
    std::sort(crossings[row].begin(), crossings[row].end());
    for (std::size_t i = 0; i + 1 < crossings[row].size(); i += 2)
      rows_[row].push_back({crossings[row][i], crossings[row][i + 1]});
  }
}

void Rows::add_circle(Point_mm center, double radius_mm) {
  const auto [first, end] = between(center.y_mm - radius_mm, center.y_mm + radius_mm);
  for (std::size_t row = first; row < end; ++row) {
    const double up = middle(row) - center.y_mm;
    const double half = std::sqrt(std::max(0.0, radius_mm * radius_mm - up * up));
    rows_[row].push_back({center.x_mm - half, center.x_mm + half});
  }
}

// Everything that near to a straight piece: two circles and the band between them, together convex,
// so one stretch a row.
void Rows::add_near(Point_mm a, Point_mm b, double within_mm) {
  const double length = distance_mm(a, b);
  const double aside = length > 0 ? within_mm / length : 0;
  const Point_mm off{-(b.y_mm - a.y_mm) * aside, (b.x_mm - a.x_mm) * aside};
  const std::array<Point_mm, 4> band{{{a.x_mm + off.x_mm, a.y_mm + off.y_mm},
                                      {b.x_mm + off.x_mm, b.y_mm + off.y_mm},
                                      {b.x_mm - off.x_mm, b.y_mm - off.y_mm},
                                      {a.x_mm - off.x_mm, a.y_mm - off.y_mm}}};
  const auto [first, end] =
      between(std::min(a.y_mm, b.y_mm) - within_mm, std::max(a.y_mm, b.y_mm) + within_mm);
  for (std::size_t row = first; row < end; ++row) {
    const double y = middle(row);
    Stretch all{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
    const auto take = [&](double from, double to) {
      all.from = std::min(all.from, from);
      all.to = std::max(all.to, to);
    };
    for (const Point_mm& tip : {a, b}) {
      const double up = y - tip.y_mm;
      if (std::abs(up) > within_mm) continue;
      const double half = std::sqrt(within_mm * within_mm - up * up);
      take(tip.x_mm - half, tip.x_mm + half);
    }
    for (std::size_t i = 0; i < band.size(); ++i) {
      const Point_mm& p = band[i];
      const Point_mm& q = band[(i + 1) % band.size()];
      if ((p.y_mm <= y) == (q.y_mm <= y)) continue;
      const double x = p.x_mm + (q.x_mm - p.x_mm) * (y - p.y_mm) / (q.y_mm - p.y_mm);
      take(x, x);
    }
    if (all.from <= all.to) rows_[row].push_back(all);
  }
}

void Rows::add_near(const Polyline& line, double within_mm) {
  if (line.size() == 1) add_near(line.front(), line.front(), within_mm);
  for (std::size_t i = 0; i + 1 < line.size(); ++i) add_near(line[i], line[i + 1], within_mm);
}

void Rows::add_near_edge(const Polygon& outline, double within_mm) {
  add_near(outline.corners, within_mm);
  if (outline.corners.size() > 2)
    add_near(outline.corners.back(), outline.corners.front(), within_mm);
}

Rows::Row Rows::joined(Row row) {
  std::sort(row.begin(), row.end(),
            [](const Stretch& a, const Stretch& b) { return a.from < b.from; });
  Row out;
  for (const Stretch& one : row) {
    if (out.empty() || one.from > out.back().to)
      out.push_back(one);
    else
      out.back().to = std::max(out.back().to, one.to);
  }
  return out;
}

void Rows::join() {
  for (Row& row : rows_) row = joined(std::move(row));
}

void Rows::circles_mm2(Point_mm center, std::span<const double> radii_mm,
                       std::span<double> areas_mm2) const {
  std::fill(areas_mm2.begin(), areas_mm2.end(), 0.0);
  for (std::size_t i = 0; i < radii_mm.size(); ++i) {
    const double radius = radii_mm[i];
    const auto [first, end] = between(center.y_mm - radius, center.y_mm + radius);
    for (std::size_t row = first; row < end; ++row) {
      const double up = middle(row) - center.y_mm;
      const double half = std::sqrt(std::max(0.0, radius * radius - up * up));
      for (const Stretch& one : rows_[row]) {
        const double left = std::min(half, center.x_mm - one.from);
        const double right = std::min(half, one.to - center.x_mm);
        areas_mm2[i] += std::max(0.0, left + right);
      }
    }
    areas_mm2[i] *= height_mm_;
  }
}

double Rows::area_mm2() const {
  double sum = 0;
  for (const Row& row : rows_)
    for (const Stretch& one : joined(row)) sum += one.to - one.from;
  return sum * height_mm_;
}

double Rows::common_area_mm2(const Rows& other) const {
  double sum = 0;
  for (std::size_t row = 0; row < rows_.size(); ++row) {
    if (rows_[row].empty() || other.rows_[row].empty()) continue;
    const Row ours = joined(rows_[row]);
    const Row theirs = joined(other.rows_[row]);
    for (std::size_t i = 0, k = 0; i < ours.size() && k < theirs.size();) {
      const double from = std::max(ours[i].from, theirs[k].from);
      const double to = std::min(ours[i].to, theirs[k].to);
      if (from < to) sum += to - from;
      if (ours[i].to < theirs[k].to)
        ++i;
      else
        ++k;
    }
  }
  return sum * height_mm_;
}

Rows Rows::without(const Rows& other) const {
  Rows out = *this;
  for (std::size_t row = 0; row < rows_.size(); ++row) {
    out.rows_[row].clear();
    const Row theirs = joined(other.rows_[row]);
    for (const Stretch& one : joined(rows_[row])) {
      double from = one.from;
      for (const Stretch& gone : theirs) {
        if (gone.to <= from) continue;
        if (gone.from >= one.to) break;
        if (gone.from > from) out.rows_[row].push_back({from, gone.from});
        from = gone.to;
      }
      if (from < one.to) out.rows_[row].push_back({from, one.to});
    }
  }
  return out;
}

}  // namespace jambline::trade
