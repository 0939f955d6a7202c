#include "trade/dirt_scan.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "trade/rows.h"

namespace jambline::trade {

namespace {
constexpr std::size_t radii = 8;
constexpr double radius_step_mm = 50;
constexpr double node_mm = 25;
constexpr double node_row_mm = 12.5;  // two a node, so that whole circles are alike

double radius_of(std::size_t which) {
  return radius_step_mm * static_cast<double>(which + 1);
}

struct Share {
  double share;
  double log_share;
  double log_rest;
};
using Shares = std::array<Share, radii>;

// The share of the panel inside each circle, from nodes 25 mm apart: found and drawn marks are
// looked up alike, so that what the nodes round off is in both.
class CircleShares {
 public:
  explicit CircleShares(const Polygon& outline)
      : box_(bounds(outline.corners)), rows_of_panel_(box_, node_row_mm) {
    rows_of_panel_.add_inside(outline);
    rows_of_panel_.join();
    area_ = rows_of_panel_.area_mm2();
    columns_ = static_cast<std::size_t>(box_.width_mm() / node_mm) + 2;
    rows_ = static_cast<std::size_t>(box_.height_mm() / node_mm) + 2;
    shares_.assign(columns_ * rows_, {});
    known_.assign(columns_ * rows_, false);
    for (std::size_t i = 0; i < radii; ++i) radii_[i] = radius_of(i);
  }
  const Shares& at(Point_mm point) {
    const auto column =
        static_cast<std::size_t>(std::lround((point.x_mm - box_.low.x_mm) / node_mm));
    const auto row = static_cast<std::size_t>(std::lround((point.y_mm - box_.low.y_mm) / node_mm));
    const std::size_t place = row * columns_ + column;
    if (!known_[place]) {
      known_[place] = true;
      const Point_mm node{box_.low.x_mm + static_cast<double>(column) * node_mm,
                          box_.low.y_mm + static_cast<double>(row) * node_mm};
      std::array<double, radii> areas{};
      rows_of_panel_.circles_mm2(node, radii_, areas);
      for (std::size_t i = 0; i < radii; ++i) {
        const double share = std::clamp(areas[i] / area_, 1e-6, 1 - 1e-12);
        shares_[place][i] = {share, std::log(share), std::log(1 - share)};
      }
    }
    return shares_[place];
  }

 private:
  Box_mm box_;
  Rows rows_of_panel_;
  double area_ = 0;
  std::size_t columns_ = 0;
  std::size_t rows_ = 0;
  std::array<double, radii> radii_{};
  std::vector<Shares> shares_;
  std::vector<bool> known_;
};

struct Seen {
  double mean_nearest = 0;
  double likelihood = 0;  // of the tightest circle
  std::size_t mark = 0;
  std::size_t radius = 0;
  std::size_t inside = 0;
};

// Log likelihood ratio of so many of n inside a share of the area, 0 when not more than expected.
double likelihood(std::size_t inside, std::size_t all, const Share& share,
                  const std::vector<double>& logs) {
  const auto in = static_cast<double>(inside);
  const auto whole = static_cast<double>(all);
  if (in <= whole * share.share) return 0;
  double sum = in * (logs[inside] - logs[all] - share.log_share);
  if (inside < all) sum += (whole - in) * (logs[all - inside] - logs[all] - share.log_rest);
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
      const Shares& shares = shares_.at(marks[i]);
      std::size_t inside = 1;
      for (std::size_t r = 0; r < radii; ++r) {
        if (r > 0 && counts_[i][r] == 0) continue;  // no more marks in a wider circle
        inside += counts_[i][r];
        const double found = likelihood(inside, count_, shares[r], logs_);
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
  double share(Point_mm mark, std::size_t radius) { return shares_.at(mark)[radius].share; }

 private:
  static constexpr double widest = radius_step_mm * radii * radius_step_mm * radii;
  CircleShares shares_;
  std::size_t count_;
  std::vector<std::array<std::size_t, radii>> counts_;
  std::vector<double> nearest_;
  std::vector<double> logs_;
};
}  // namespace

DirtScan scan_dirt(const Polygon& outline, const std::vector<Point_mm>& in_any_order, int patterns,
                   Draws& draws) {
  std::vector<Point_mm> marks = in_any_order;
  std::sort(marks.begin(), marks.end(), [](const Point_mm& a, const Point_mm& b) {
    return a.x_mm < b.x_mm || (a.x_mm == b.x_mm && a.y_mm < b.y_mm);
  });
  Scanner scanner(outline, marks.size());
  const Seen seen = scanner.look(marks);
  const PointsInside inside(outline);
  std::vector<Point_mm> drawn(marks.size());
  DirtScan out;
  int as_tight = 0;
  int as_clustered = 0;
  double sum = 0;
  for (int pattern = 0; pattern < patterns; ++pattern) {
    for (Point_mm& one : drawn) one = inside.draw(draws);
    const Seen chance = scanner.look(drawn);
    sum += chance.mean_nearest;
    as_tight += chance.mean_nearest <= seen.mean_nearest;
    as_clustered += chance.likelihood >= seen.likelihood;
    out.spacing_ties += chance.mean_nearest == seen.mean_nearest;
    out.cluster_ties += chance.likelihood == seen.likelihood;
  }
  out.mean_nearest_mm = seen.mean_nearest;
  out.expected_nearest_mm = sum / patterns;
  out.spacing_chance = (as_tight + 1.0) / (patterns + 1.0);
  out.cluster_chance = (as_clustered + 1.0) / (patterns + 1.0);
  out.cluster_center = marks[seen.mark];
  out.cluster_radius_mm = radius_of(seen.radius);
  out.cluster_marks = static_cast<int>(seen.inside);
  out.cluster_expected =
      static_cast<double>(marks.size()) * scanner.share(marks[seen.mark], seen.radius);
  return out;
}

}  // namespace jambline::trade
