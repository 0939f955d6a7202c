// circles_union_area_mm2 of trade/correction_plan.h.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "trade/correction_plan.h"

namespace jambline::trade {

namespace {
constexpr double whole_turn = 2 * std::numbers::pi;

struct Arc {
  double from;
  double to;
};

bool swallows(const Circle_mm& big, const Circle_mm& small) {
  return distance_mm(big.center, small.center) + small.radius_mm <= big.radius_mm + 1e-12;
}

// The parts of circle `of` that lie inside `other`, as one or two arcs within [0, 2 pi].
void covered_by(const Circle_mm& of, const Circle_mm& other, std::vector<Arc>& out) {
  const double apart = distance_mm(of.center, other.center);
  if (apart >= of.radius_mm + other.radius_mm || apart + of.radius_mm <= other.radius_mm) return;
  const double towards =
      std::atan2(other.center.y_mm - of.center.y_mm, other.center.x_mm - of.center.x_mm);
  const double cosine =
      (of.radius_mm * of.radius_mm + apart * apart - other.radius_mm * other.radius_mm) /
      (2 * of.radius_mm * apart);
  const double half = std::acos(std::clamp(cosine, -1.0, 1.0));
  double from = towards - half;
  double to = towards + half;
  if (from < 0) {
    from += whole_turn;
    to += whole_turn;
  }
  if (to <= whole_turn) {
    out.push_back({from, to});
  } else {
    out.push_back({from, whole_turn});
    out.push_back({0, to - whole_turn});
  }
}

// Half the integral of x dy - y dx along an arc.
double along(const Circle_mm& circle, double from, double to) {
  const double r = circle.radius_mm;
  const Point_mm& c = circle.center;
  return (r * r * (to - from) + r * c.x_mm * (std::sin(to) - std::sin(from)) -
          r * c.y_mm * (std::cos(to) - std::cos(from))) /
         2;
}
}  // namespace

double circles_union_area_mm2(const std::vector<Circle_mm>& all) {
  std::vector<Circle_mm> circles;
  for (std::size_t i = 0; i < all.size(); ++i) {
    bool gone = all[i].radius_mm <= 0;
    for (std::size_t j = 0; j < all.size() && !gone; ++j)
      gone = i != j && swallows(all[j], all[i]) && (!swallows(all[i], all[j]) || j < i);
    if (!gone) circles.push_back(all[i]);
  }
  double area = 0;
  std::vector<Arc> covered;
  for (std::size_t i = 0; i < circles.size(); ++i) {
    covered.clear();
    for (std::size_t j = 0; j < circles.size(); ++j)
      if (i != j) covered_by(circles[i], circles[j], covered);
    std::sort(covered.begin(), covered.end(),
              [](const Arc& a, const Arc& b) { return a.from < b.from; });
    double at = 0;
    for (const Arc& arc : covered) {
      if (arc.from > at) area += along(circles[i], at, arc.from);
      at = std::max(at, arc.to);
    }
    if (at < whole_turn) area += along(circles[i], at, whole_turn);
  }
  return area;
}

}  // namespace jambline::trade
