#include "trade/dirt_scan.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace jambline::trade {

namespace {
constexpr std::size_t radii = 8;
constexpr double radius_step_mm = 50;
constexpr double node_mm = 25;

double radius_of(std::size_t which) {
  return radius_step_mm * static_cast<double>(which + 1);
}

// The share of the panel inside each circle, from nodes 25 mm apart: found and drawn marks are
// looked up alike, so that what the nodes round off is in both.
class CircleShares {
 public:
  explicit CircleShares(const Polygon& outline)
      : box_(bounds(outline.corners)), area_(area_mm2(outline)) {
    columns_ = static_cast<std::size_t>(box_.width_mm() / node_mm) + 2;
    rows_ = static_cast<std::size_t>(box_.height_mm() / node_mm) + 2;
    shares_.assign(columns_ * rows_, {});
    known_.assign(columns_ * rows_, false);
    outline_ = &outline;
  }
  const std::array<double, radii>& at(Point_mm point) {
    const auto column =
        static_cast<std::size_t>(std::lround((point.x_mm - box_.low.x_mm) / node_mm));
    const auto row = static_cast<std::size_t>(std::lround((point.y_mm - box_.low.y_mm) / node_mm));
    const std::size_t place = row * columns_ + column;
    if (!known_[place]) {
      known_[place] = true;
      const Point_mm node{box_.low.x_mm + static_cast<double>(column) * node_mm,
                          box_.low.y_mm + static_cast<double>(row) * node_mm};
      for (std::size_t i = 0; i < radii; ++i)
        shares_[place][i] =
            std::max(1e-6, circle_area_inside(node, radius_of(i), *outline_) / area_);
    }
    return shares_[place];
  }

 private:
  Box_mm box_;
  double area_;
  std::size_t columns_ = 0;
  std::size_t rows_ = 0;
  const Polygon* outline_ = nullptr;
  std::vector<std::array<double, radii>> shares_;
  std::vector<bool> known_;
};

struct Seen {
  double mean_nearest = 0;
  double likelihood = 0;  // of the tightest circle
  std::size_t mark = 0;
  std::size_t radius = 0;
  int inside = 0;
};

// Log likelihood ratio of so many of n inside a share of the area, 0 when not more than expected.
double likelihood(int inside, int all, double share, const std::vector<double>& logs) {
  const double expected = all * share;
  if (inside <= expected) return 0;
  const double out = all - expected;
  double sum = inside * (logs[static_cast<std::size_t>(inside)] - std::log(expected));
  if (inside < all && out > 0)
    sum += (all - inside) * (logs[static_cast<std::size_t>(all - inside)] - std::log(out));
  return sum;
}

class Scanner {
 public:
  Scanner(const Polygon& outline, std::size_t count)
      : shares_(outline), count_(count), counts_(count), nearest_(count), logs_(count + 1) {
    for (std::size_t i = 1; i <= count; ++i) logs_[i] = std::log(static_cast<double>(i));
  }

  Seen look(const std::vector<Point_mm>& marks) {
    for (auto& one : counts_) one.fill(0);
    std::fill(nearest_.begin(), nearest_.end(), std::numeric_limits<double>::infinity());
    for (std::size_t i = 0; i < count_; ++i) {
      for (std::size_t j = i + 1; j < count_; ++j) {
        const double x = marks[i].x_mm - marks[j].x_mm;
        const double y = marks[i].y_mm - marks[j].y_mm;
        const double apart = x * x + y * y;
        nearest_[i] = std::min(nearest_[i], apart);
        nearest_[j] = std::min(nearest_[j], apart);
        if (apart > widest) continue;
        // The first circle that holds it: 50 mm steps, a mark on the line counts as inside.
        auto ring = static_cast<std::size_t>(std::sqrt(apart) / radius_step_mm);
        if (ring > 0 && apart <= radius_of(ring - 1) * radius_of(ring - 1)) --ring;
        ++counts_[i][ring];
        ++counts_[j][ring];
      }
    }
    Seen out;
    for (std::size_t i = 0; i < count_; ++i) {
      out.mean_nearest += std::sqrt(nearest_[i]) / static_cast<double>(count_);
      const auto& share = shares_.at(marks[i]);
      int inside = 1;
      for (std::size_t r = 0; r < radii; ++r) {
        inside += counts_[i][r];
        const double found = likelihood(inside, static_cast<int>(count_), share[r], logs_);
        if (found > out.likelihood) {
          out.likelihood = found;
          out.mark = i;
          out.radius = r;
          out.inside = inside;
        }
      }
    }
    return out;
  }
  double share(Point_mm mark, std::size_t radius) { return shares_.at(mark)[radius]; }

 private:
  static constexpr double widest = radius_step_mm * radii * radius_step_mm * radii;
  CircleShares shares_;
  std::size_t count_;
  std::vector<std::array<int, radii>> counts_;
  std::vector<double> nearest_;
  std::vector<double> logs_;
};
}  // namespace

DirtScan scan_dirt(const Polygon& outline, const std::vector<Point_mm>& marks, int patterns,
                   Draws& draws) {
  Scanner scanner(outline, marks.size());
  const Seen seen = scanner.look(marks);
  const PointsInside inside(outline);
  std::vector<Point_mm> drawn(marks.size());
  int as_tight = 0;
  int as_clustered = 0;
  double sum = 0;
  for (int pattern = 0; pattern < patterns; ++pattern) {
    for (Point_mm& one : drawn) one = inside.draw(draws);
    const Seen chance = scanner.look(drawn);
    sum += chance.mean_nearest;
    as_tight += chance.mean_nearest <= seen.mean_nearest;
    as_clustered += chance.likelihood >= seen.likelihood;
  }
  DirtScan out;
  out.mean_nearest_mm = seen.mean_nearest;
  out.expected_nearest_mm = sum / patterns;
  out.spacing_chance = (as_tight + 1.0) / (patterns + 1.0);
  out.cluster_chance = (as_clustered + 1.0) / (patterns + 1.0);
  out.cluster_center = marks[seen.mark];
  out.cluster_radius_mm = radius_of(seen.radius);
  out.cluster_marks = seen.inside;
  out.cluster_expected =
      static_cast<double>(marks.size()) * scanner.share(marks[seen.mark], seen.radius);
  return out;
}

}  // namespace jambline::trade
