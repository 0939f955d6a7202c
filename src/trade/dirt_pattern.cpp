#include "trade/dirt_pattern.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include "trade/dirt_scan.h"
#include "trade/refusal.h"

namespace jambline::trade {

namespace {
constexpr std::size_t most_marks = 500;
constexpr double area_node_mm = 10;
constexpr double group_eps_mm = 120;
constexpr int group_marks = 3;

Status checked(const DirtPattern& in) {
  if (in.panels.empty()) return fail(refusal(Code::Missing, "panels", "no panel"));
  if (in.panels.size() > 100) return fail(refusal(Code::TooLarge, "panels", "100 at most"));
  JAMBLINE_TRY(need("patterns", in.patterns, 99, 99999, "99 to 99,999"));
  JAMBLINE_TRY(need("edge_band_mm", in.edge_band_mm, 5, 300, "5 to 300 mm"));
  for (std::size_t i = 0; i < in.panels.size(); ++i) {
    const DirtPanel& panel = in.panels[i];
    const Polygon outline{panel.outline};
    for (std::size_t k = 0; k < panel.outline.size(); ++k) {
      const std::string field = item("panels", i, "outline") + '[' + std::to_string(k) + ']';
      JAMBLINE_TRY(need(field, panel.outline[k].x_mm, -1e5, 1e5, "within 100 m"));
      JAMBLINE_TRY(need(field, panel.outline[k].y_mm, -1e5, 1e5, "within 100 m"));
    }
    if (panel.outline.size() < 3 || crosses_itself(outline))
      return fail(refusal(Code::Malformed, item("panels", i, "outline"),
                          "not a simple outline of three corners or more"));
    if (panel.marks.size() > most_marks)
      return fail(refusal(Code::TooLarge, item("panels", i, "marks"), "500 at most"));
    for (std::size_t k = 0; k < panel.marks.size(); ++k) {
      const std::string field = item("panels", i, "marks") + '[' + std::to_string(k) + ']';
      JAMBLINE_TRY(need(field, panel.marks[k].x_mm, -1e5, 1e5, "within 100 m"));
      JAMBLINE_TRY(need(field, panel.marks[k].y_mm, -1e5, 1e5, "within 100 m"));
      if (!contains(outline, panel.marks[k]))
        return fail(refusal(Code::OutOfRange, field, "off its panel"));
    }
  }
  if (in.history) {
    JAMBLINE_TRY(need("history.flat_m2", in.history->flat_m2, 0, 1e9, "not negative"));
    JAMBLINE_TRY(need("history.upright_m2", in.history->upright_m2, 0, 1e9, "not negative"));
    JAMBLINE_TRY(need("history.flat_marks", static_cast<double>(in.history->flat_marks), 0, 1e9,
                      "not negative"));
    JAMBLINE_TRY(need("history.upright_marks", static_cast<double>(in.history->upright_marks), 0,
                      1e9, "not negative"));
  }
  return {};
}

// The share of a panel's area for which something holds, on nodes 10 mm apart.
double share_of(const Polygon& outline, const std::function<bool(Point_mm)>& holds) {
  const Box_mm box = bounds(outline.corners);
  const auto rows = static_cast<int>(std::ceil(box.height_mm() / area_node_mm));
  const auto columns = static_cast<int>(std::ceil(box.width_mm() / area_node_mm));
  std::int64_t all = 0;
  std::int64_t those = 0;
  for (int row = 0; row < rows; ++row)
    for (int column = 0; column < columns; ++column) {
      const Point_mm node{box.low.x_mm + (column + 0.5) * area_node_mm,
                          box.low.y_mm + (row + 0.5) * area_node_mm};
      if (!contains(outline, node)) continue;
      ++all;
      those += holds(node);
    }
  return all == 0 ? 0 : static_cast<double>(those) / static_cast<double>(all);
}

std::function<bool(Point_mm)> near_lines(const std::vector<DirtLine>& lines, double within_mm) {
  return [&lines, within_mm](Point_mm point) {
    return std::any_of(lines.begin(), lines.end(), [&](const DirtLine& line) {
      return distance_to_line_mm(point, line.points) <= within_mm;
    });
  };
}

class Car {
 public:
  explicit Car(const DirtPattern& in) : in_(in), draws_(in.seed) {}

  DirtPatternResult look() {
    int all = 0;
    for (const DirtPanel& panel : in_.panels)
      all += panel.all_over ? 0 : static_cast<int>(panel.marks.size());
    for (const DirtPanel& panel : in_.panels) look_at(panel);
    if (all >= dirt_least_on_car) {
      flat_upright();
      plastic_metal();
      first_last();
    }
    judge(all);
    return std::move(out_);
  }

 private:
  void sign(DirtSign sign, const std::string& panel, double chance, double seen, double expected,
            std::optional<DirtCluster> cluster = {}) {
    out_.evidence.push_back({sign, panel, chance, 1, seen, expected, cluster});
  }

  void look_at(const DirtPanel& panel) {
    DirtPanelGroups groups{panel.panel, static_cast<int>(panel.marks.size()), false, 0, {}};
    const Polygon outline{panel.outline};
    if (panel.marks.size() > 1)
      groups.clark_evans = clark_evans_index(panel.marks, area_mm2(outline));
    groups.groups = dbscan_groups(panel.marks, group_eps_mm, group_marks);
    groups.too_few = panel.all_over || groups.marks < dirt_least_on_panel;
    if (!groups.too_few) {
      const DirtScan scan = scan_dirt(outline, panel.marks, in_.patterns, draws_);
      sign(DirtSign::Spacing, panel.panel, scan.spacing_chance, scan.mean_nearest_mm,
           scan.expected_nearest_mm);
      sign(DirtSign::Cluster, panel.panel, scan.cluster_chance, scan.cluster_marks,
           scan.cluster_expected,
           DirtCluster{scan.cluster_center, scan.cluster_radius_mm, scan.cluster_marks});
      band(DirtSign::MaskedEdge, panel, near_lines(panel.masked_edges, in_.edge_band_mm),
           !panel.masked_edges.empty());
      band(DirtSign::Seam, panel, near_lines(panel.seams, in_.edge_band_mm), !panel.seams.empty());
      const Polygon strip{panel.reach_strip};
      band(
          DirtSign::ReachStrip, panel, [&](Point_mm point) { return contains(strip, point); },
          panel.reach_strip.size() >= 3);
    }
    out_.panels.push_back(std::move(groups));
  }

  void band(DirtSign which, const DirtPanel& panel, const std::function<bool(Point_mm)>& holds,
            bool there) {
    if (!there) return;
    const double share = share_of(Polygon{panel.outline}, holds);
    if (share <= 0 || share >= 1) return;
    const auto inside = std::count_if(panel.marks.begin(), panel.marks.end(), holds);
    const auto all = static_cast<std::int64_t>(panel.marks.size());
    sign(which, panel.panel, binomial_at_least(inside, all, share), static_cast<double>(inside),
         share * static_cast<double>(all));
  }

  struct Side {
    std::int64_t marks = 0;
    double m2 = 0;
  };
  template <class Which>
  Side side(Which which) const {
    Side out;
    for (const DirtPanel& panel : in_.panels) {
      if (panel.all_over || !which(panel)) continue;
      out.marks += static_cast<std::int64_t>(panel.marks.size());
      out.m2 += area_mm2(Polygon{panel.outline}) / 1e6;
    }
    return out;
  }
  // Given how many there are on both, more on the first side than its weight.
  void compare(DirtSign which, const Side& one, const Side& other, double weight_one,
               double weight_other) {
    const std::int64_t both = one.marks + other.marks;
    if (one.m2 <= 0 || other.m2 <= 0 || both == 0) return;
    const double share = weight_one / (weight_one + weight_other);
    sign(which, "", binomial_at_least(one.marks, both, share), static_cast<double>(one.marks),
         share * static_cast<double>(both));
  }

  void flat_upright() {
    const Side flat = side([](const DirtPanel& panel) { return panel.lie == Lie::Flat; });
    const Side upright = side([](const DirtPanel& panel) { return panel.lie == Lie::Upright; });
    const auto& past = in_.history;
    if (!past || past->flat_marks == 0 || past->upright_marks == 0 || past->flat_m2 <= 0 ||
        past->upright_m2 <= 0)
      return;
    out_.flat_compared = true;
    // The history is itself a count: both are compared as two tables with one ratio (conditional
    // exact would be noncentral); the usual ratio is taken as known.
    const double usual = (static_cast<double>(past->flat_marks) / past->flat_m2) /
                         (static_cast<double>(past->upright_marks) / past->upright_m2);
    out_.basis.term("this shop's usual flat over upright", usual, "", measured);
    compare(DirtSign::FlatOverUpright, flat, upright, usual * flat.m2, upright.m2);
  }

  void plastic_metal() {
    const Side plastic = side([](const DirtPanel& panel) { return panel.plastic; });
    const Side metal = side([](const DirtPanel& panel) { return !panel.plastic; });
    compare(DirtSign::PlasticOverMetal, plastic, metal, plastic.m2, metal.m2);
  }

  void first_last() {
    std::vector<int> order;
    for (const DirtPanel& panel : in_.panels)
      if (panel.sprayed > 0 && !panel.all_over) order.push_back(panel.sprayed);
    if (order.size() < 4) return;
    std::sort(order.begin(), order.end());
    const int half = order[order.size() / 2];
    const Side first =
        side([&](const DirtPanel& panel) { return panel.sprayed > 0 && panel.sprayed < half; });
    const Side last = side([&](const DirtPanel& panel) { return panel.sprayed >= half; });
    compare(DirtSign::FirstPanels, first, last, first.m2, last.m2);
    compare(DirtSign::LastPanels, last, first, last.m2, first.m2);
  }

  void judge(int all) {
    std::vector<double> chances;
    for (const auto& one : out_.evidence) chances.push_back(one.chance);
    const auto corrected = holm(chances);
    for (std::size_t i = 0; i < corrected.size(); ++i) out_.evidence[i].holm_chance = corrected[i];
    std::stable_sort(out_.evidence.begin(), out_.evidence.end(),
                     [](const auto& a, const auto& b) { return a.chance < b.chance; });
    const bool points = !out_.evidence.empty() && out_.evidence.front().holm_chance < dirt_level;
    out_.word = out_.evidence.empty() ? DirtWord::TooFew
                : points              ? DirtWord::Points
                                      : DirtWord::LooksLikeChance;
    out_.basis.method =
        "Each sign against chance (drawn patterns, exact binomial), Holm over all signs of the "
        "car.";
    out_.basis.seed = in_.seed;
    out_.basis.term("marks", all, "", measured);
    out_.basis.term("patterns drawn", in_.patterns, "", entered);
    out_.basis.term("signs looked at", static_cast<double>(chances.size()), "", computed);
    out_.basis.term("edge band", in_.edge_band_mm, "mm", common_practice);
    out_.basis.term("least on a panel", dirt_least_on_panel, "", common_practice);
    out_.basis.term("least on a car", dirt_least_on_car, "", common_practice);
    out_.basis.term("level", dirt_level, "", common_practice);
  }

  const DirtPattern& in_;
  Draws draws_;
  DirtPatternResult out_;
};
}  // namespace

Result<DirtPatternResult> dirt_pattern(const DirtPattern& in) {
  JAMBLINE_TRY(checked(in));
  return Car(in).look();
}

}  // namespace jambline::trade
