#include "trade/dirt_pattern.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <set>
#include <tuple>

#include "trade/dirt_scan.h"
#include "trade/refusal.h"
#include "trade/rows.h"

namespace jambline::trade {

namespace {
constexpr std::size_t most_found = 500;
constexpr double dirt_row_mm = 2;
constexpr double group_eps_mm = 120;
constexpr int group_marks = 3;
constexpr double least_m2 = 0.01;  // of a history that is compared with

Status checked(const DirtPattern& in) {
  if (in.panels.empty()) return fail(refusal(Code::Missing, "panels", "no panel"));
  if (in.panels.size() > 100) return fail(refusal(Code::TooLarge, "panels", "100 at most"));
  JAMBLINE_TRY(need("patterns", in.patterns, 99, 99999, "99 to 99,999"));
  JAMBLINE_TRY(need("edge_band_mm", in.edge_band_mm, 5, 300, "5 to 300 mm"));
  std::set<std::string> names;
  for (std::size_t i = 0; i < in.panels.size(); ++i) {
    const DirtPanel& panel = in.panels[i];
    if (!names.insert(panel.panel).second)
      return fail(refusal(Code::Malformed, item("panels", i, "panel"), "the same name twice"));
    const Polygon outline{panel.outline};
    JAMBLINE_TRY(need_outline(item("panels", i, "outline"), panel.outline));
    JAMBLINE_TRY(need_lines(item("panels", i, "masked_edges"), panel.masked_edges));
    JAMBLINE_TRY(need_lines(item("panels", i, "seams"), panel.seams));
    JAMBLINE_TRY(need_lines(item("panels", i, "reach_strips"), panel.reach_strips));
    for (std::size_t k = 0; k < panel.reach_strips.size(); ++k)
      JAMBLINE_TRY(
          need_outline(item("panels", i, "reach_strips") + '[' + std::to_string(k) + "].points",
                       panel.reach_strips[k].points));
    JAMBLINE_TRY(need(item("panels", i, "sprayed"), panel.sprayed, 0, 100, "0 to 100"));
    if (panel.marks.size() > most_found)
      return fail(refusal(Code::TooLarge, item("panels", i, "marks"), "500 at most"));
    for (std::size_t k = 0; k < panel.marks.size(); ++k) {
      const std::string field = item("panels", i, "marks") + '[' + std::to_string(k) + ']';
      JAMBLINE_TRY(need_place(field, panel.marks[k]));
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

// DBSCAN in an order of the marks that hangs on their places only: a mark between two groups goes
// to the same one whatever the list's order.
std::vector<int> groups_of(const std::vector<Point_mm>& marks) {
  std::vector<std::size_t> order(marks.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return std::tie(marks[a].x_mm, marks[a].y_mm) < std::tie(marks[b].x_mm, marks[b].y_mm);
  });
  std::vector<Point_mm> sorted;
  sorted.reserve(marks.size());
  for (const std::size_t at : order) sorted.push_back(marks[at]);
  const auto found = dbscan_groups(sorted, group_eps_mm, group_marks);
  std::vector<int> out(marks.size(), no_group);
  for (std::size_t i = 0; i < order.size(); ++i) out[order[i]] = found[i];
  std::map<int, int> numbers;
  for (int& one : out)
    if (one != no_group)
      one = numbers.try_emplace(one, static_cast<int>(numbers.size())).first->second;
  return out;
}

class Car {
 public:
  explicit Car(const DirtPattern& in) : in_(in) {}

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
    groups.groups = groups_of(panel.marks);
    groups.too_few = panel.all_over || groups.marks < dirt_least_on_panel;
    if (!groups.too_few) {
      Draws draws(seed_of(in_.seed, panel.panel));
      const DirtScan scan = scan_dirt(outline, panel.marks, in_.patterns, draws);
      sign(DirtSign::Spacing, panel.panel, scan.spacing_chance, scan.mean_nearest_mm,
           scan.expected_nearest_mm);
      sign(DirtSign::Cluster, panel.panel, scan.cluster_chance, scan.cluster_marks,
           scan.cluster_expected,
           DirtCluster{scan.cluster_center, scan.cluster_radius_mm, scan.cluster_marks});
      lines(DirtSign::MaskedEdge, panel, panel.masked_edges);
      lines(DirtSign::Seam, panel, panel.seams);
      strips(panel);
    }
    out_.panels.push_back(std::move(groups));
  }

  void lines(DirtSign which, const DirtPanel& panel, const std::vector<PanelLine>& lines) {
    if (lines.empty()) return;
    Rows band(bounds(panel.outline), dirt_row_mm);
    for (const PanelLine& line : lines) band.add_near(line.points, in_.edge_band_mm);
    share(which, panel, band,
          std::count_if(panel.marks.begin(), panel.marks.end(), [&](const Point_mm& mark) {
            return distance_to_lines_mm(mark, lines) <= in_.edge_band_mm;
          }));
  }

  void strips(const DirtPanel& panel) {
    Rows band(bounds(panel.outline), dirt_row_mm);
    for (const PanelLine& one : panel.reach_strips) band.add_inside(Polygon{one.points});
    share(DirtSign::ReachStrip, panel, band,
          std::count_if(panel.marks.begin(), panel.marks.end(), [&](const Point_mm& mark) {
            return std::any_of(
                panel.reach_strips.begin(), panel.reach_strips.end(),
                [&](const PanelLine& one) { return contains(Polygon{one.points}, mark); });
          }));
  }

  // More marks in a band than its share of the panel's area.
  void share(DirtSign which, const DirtPanel& panel, const Rows& band, std::int64_t inside) {
    Rows whole(bounds(panel.outline), dirt_row_mm);
    whole.add_inside(Polygon{panel.outline});
    const double part = whole.common_area_mm2(band) / whole.area_mm2();
    if (!(part > 0 && part < 1)) return;
    const auto all = static_cast<std::int64_t>(panel.marks.size());
    sign(which, panel.panel, binomial_at_least(inside, all, part), static_cast<double>(inside),
         part * static_cast<double>(all));
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
  // More marks on one side than its share of area, flat panels among flat ones and so on: flat
  // panels always catch more, which must not speak for the side that they happen to stand on.
  template <class One, class Other>
  void compare(DirtSign which, One on_one, Other on_other) {
    std::vector<BinomialPart> parts;
    std::int64_t seen = 0;
    double expected = 0;
    for (const Lie lie : {Lie::Flat, Lie::Sloped, Lie::Upright}) {
      const auto lies = [&](const auto& on) {
        return side([&](const DirtPanel& panel) { return panel.lie == lie && on(panel); });
      };
      const Side one = lies(on_one);
      const Side other = lies(on_other);
      const std::int64_t both = one.marks + other.marks;
      if (one.m2 <= 0 || other.m2 <= 0 || both == 0) continue;
      parts.push_back({both, one.m2 / (one.m2 + other.m2)});
      seen += one.marks;
      expected += static_cast<double>(both) * parts.back().share;
    }
    if (!parts.empty())
      sign(which, "", binomials_at_least(seen, parts), static_cast<double>(seen), expected);
  }

  void flat_upright() {
    const Side flat = side([](const DirtPanel& panel) { return panel.lie == Lie::Flat; });
    const Side upright = side([](const DirtPanel& panel) { return panel.lie == Lie::Upright; });
    const auto& past = in_.history;
    if (!past || past->flat_marks == 0 || past->upright_marks == 0 || past->flat_m2 < least_m2 ||
        past->upright_m2 < least_m2)
      return;
    out_.flat_compared = true;
    const double usual_ratio = (static_cast<double>(past->flat_marks) / past->flat_m2) /
                               (static_cast<double>(past->upright_marks) / past->upright_m2);
    out_.basis.term("this shop's marks on flat panels", static_cast<double>(past->flat_marks), "",
                    measured);
    out_.basis.term("this shop's flat area", past->flat_m2, "m2", measured);
    out_.basis.term("this shop's marks on upright panels", static_cast<double>(past->upright_marks),
                    "", measured);
    out_.basis.term("this shop's upright area", past->upright_m2, "m2", measured);
    out_.basis.term("this shop's usual flat over upright", usual_ratio, "", computed);
    const std::int64_t both = flat.marks + upright.marks;
    if (both == 0 || flat.m2 <= 0 || upright.m2 <= 0) return;
    out_.flat_compared = true;
    const double odds = flat.m2 / upright.m2 / (past->flat_m2 / past->upright_m2);
    const double share = usual_ratio * flat.m2 / (usual_ratio * flat.m2 + upright.m2);
    sign(DirtSign::FlatOverUpright, "",
         drawn_at_least(flat.marks, both, flat.marks + past->flat_marks,
                        upright.marks + past->upright_marks, odds),
         static_cast<double>(flat.marks), share * static_cast<double>(both));
  }

  void plastic_metal() {
    compare(
        DirtSign::PlasticOverMetal, [](const DirtPanel& panel) { return panel.plastic; },
        [](const DirtPanel& panel) { return !panel.plastic; });
  }

  void first_last() {
    std::vector<int> order;
    for (const DirtPanel& panel : in_.panels)
      if (panel.sprayed > 0 && !panel.all_over) order.push_back(panel.sprayed);
    if (order.size() < 4) return;
    std::sort(order.begin(), order.end());
    const int half = order[order.size() / 2];
    const auto first = [half](const DirtPanel& panel) {
      return panel.sprayed > 0 && panel.sprayed < half;
    };
    const auto last = [half](const DirtPanel& panel) { return panel.sprayed >= half; };
    compare(DirtSign::FirstPanels, first, last);
    compare(DirtSign::LastPanels, last, first);
  }

  void judge(int all) {
    std::vector<double> chances;
    for (const auto& one : out_.evidence) chances.push_back(one.chance);
    const auto corrected = holm(chances);
    for (std::size_t i = 0; i < corrected.size(); ++i) out_.evidence[i].holm_chance = corrected[i];
    std::stable_sort(out_.evidence.begin(), out_.evidence.end(), [](const auto& a, const auto& b) {
      return std::tie(a.chance, a.sign, a.panel) < std::tie(b.chance, b.sign, b.panel);
    });
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
    out_.basis.term("edge band", in_.edge_band_mm, "mm",
                    usual(in_.edge_band_mm, DirtPattern{}.edge_band_mm));
    out_.basis.term("narrowest circle", 50, "mm", "Kulldorff, 1997; radii common practice");
    out_.basis.term("widest circle", 400, "mm", "Kulldorff, 1997; radii common practice");
    out_.basis.term("a group lies within", group_eps_mm, "mm",
                    "Ester et al., 1996; reach common practice");
    out_.basis.term("a group has at least", group_marks, "marks", common_practice);
    for (const DirtPanel& panel : in_.panels)
      out_.basis.term("area of " + panel.panel, area_mm2(Polygon{panel.outline}) / 1e6, "m2",
                      computed);
    out_.basis.term("least on a panel", dirt_least_on_panel, "", common_practice);
    out_.basis.term("least on a car", dirt_least_on_car, "", common_practice);
    out_.basis.term("level", dirt_level, "", common_practice);
  }

  const DirtPattern& in_;
  DirtPatternResult out_;
};
}  // namespace

Result<DirtPatternResult> dirt_pattern(const DirtPattern& in) {
  JAMBLINE_TRY(checked(in));
  return Car(in).look();
}

}  // namespace jambline::trade
