#include "app/calc/calculation.h"
#include "trade/control_chart.h"
#include "trade/dirt_pattern.h"
#include "trade/outline.h"
#include "trade/points.h"
#include "trade/refusal.h"

namespace jambline::app {

namespace {
using trade::Point_mm;

// Eleven nibs on the hood, six of them close together above the left edge.
trade::DirtPattern pattern_example() {
  trade::DirtPanel hood;
  hood.panel = "hood";
  hood.outline = {{0, 100}, {1150, 0}, {1150, 1450}, {0, 1350}};
  hood.lie = trade::Lie::Flat;
  hood.sprayed = 1;
  hood.masked_edges = {{{{1150, 0}, {1150, 1450}}}};
  hood.reach_strips = {{{{300, 550}, {850, 550}, {850, 900}, {300, 900}}}};
  hood.marks = {{210, 240}, {255, 262}, {231, 301},  {284, 318},  {246, 355}, {301, 279},
                {640, 910}, {88, 1180}, {1010, 720}, {870, 1330}, {520, 1090}};
  trade::DirtPanel fender;
  fender.panel = "left fender";
  fender.outline = {{0, 0},   {300, 0},  {420, 260},  {730, 260},
                    {850, 0}, {1150, 0}, {1150, 650}, {0, 600}};
  fender.lie = trade::Lie::Upright;
  fender.sprayed = 2;
  fender.seams = {{{{1150, 0}, {1150, 650}}}};
  fender.marks = {{130, 420}, {905, 510}};
  trade::DirtPanel bumper;
  bumper.panel = "front bumper cover";
  bumper.outline = {{0, 0}, {2150, 0}, {2150, 560}, {0, 560}};
  bumper.lie = trade::Lie::Upright;
  bumper.plastic = true;
  bumper.sprayed = 3;
  bumper.marks = {{1333, 402}};
  trade::DirtPattern out;
  out.panels = {hood, fender, bumper};
  out.history = trade::FlatHistory{412, 268.5, 190, 402.1};
  out.seed = 4206;
  return out;
}

trade::DirtChart chart_example() {
  trade::DirtChart out;
  const std::int64_t before[] = {9, 14, 7, 11, 16, 8, 12, 10, 13, 9};
  const std::int64_t after[] = {5, 3, 6, 4, 2, 7, 4, 5, 3, 4};
  for (int i = 0; i < 10; ++i) out.jobs.push_back({i * 2.0, before[i], 3.2 + 0.3 * (i % 4)});
  for (int i = 0; i < 10; ++i) out.jobs.push_back({20 + i * 2.0, after[i], 3.1 + 0.4 * (i % 3)});
  out.events = {{20, "new ceiling filters"}};
  return out;
}

// 1) How points lie on one panel.

struct Spacing {
  std::vector<Point_mm> points;
  double area_mm2{};
  double perimeter_mm{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "points"}, self.points);
    visit(Field{.name = "area_mm2", .unit = "mm2", .min = 1, .max = 1e9}, self.area_mm2);
    visit(Field{.name = "perimeter_mm", .unit = "mm", .min = 1, .max = 1e6}, self.perimeter_mm);
  }
};

struct SpacingResult {
  double mean_nearest_mm{};
  double clark_evans{};
  double donnelly{};
  trade::Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "mean_nearest_mm", .unit = "mm"}, self.mean_nearest_mm);
    visit(Field{.name = "clark_evans"}, self.clark_evans);
    visit(Field{.name = "donnelly"}, self.donnelly);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Status check_points(const std::vector<Point_mm>& points, std::size_t least) {
  if (points.size() < least)
    return fail(trade::refusal(Code::Missing, "points", std::to_string(least) + " at least"));
  return trade::need_line("points", points);
}

Result<SpacingResult> spacing(const Spacing& in) {
  JAMBLINE_TRY(check_points(in.points, 2));
  SpacingResult out;
  out.mean_nearest_mm = trade::mean_nearest(in.points);
  out.clark_evans = trade::clark_evans_index(in.points, in.area_mm2);
  out.donnelly = trade::donnelly_index(in.points, in.area_mm2, in.perimeter_mm);
  out.basis.method =
      "Mean distance to the nearest neighbor over what chance would give; under 1: clustered.";
  out.basis.term("points", static_cast<double>(in.points.size()), "", trade::measured);
  out.basis.term("area", in.area_mm2, "mm2", trade::measured);
  out.basis.term("perimeter", in.perimeter_mm, "mm", trade::measured);
  out.basis.term("mean nearest distance", out.mean_nearest_mm, "mm", trade::computed);
  out.basis.term("index without edges", out.clark_evans, "", "Clark and Evans, 1954");
  out.basis.term("index of a rectangle's edges", out.donnelly, "", "Donnelly, 1978");
  return out;
}

Spacing spacing_example() {
  return {{{210, 240}, {255, 262}, {231, 301}, {284, 318}, {640, 910}, {1010, 720}}, 1.6e6, 5200};
}

struct Groups {
  std::vector<Point_mm> points;
  double reach_mm{};
  int least_marks{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "points"}, self.points);
    visit(Field{.name = "reach_mm", .unit = "mm", .min = 0, .max = 1e4}, self.reach_mm);
    visit(Field{.name = "least_marks", .doc = "within reach, itself counted", .min = 1, .max = 500},
          self.least_marks);
  }
};

struct GroupsResult {
  std::vector<int> groups;
  trade::Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "groups", .doc = "one a point, -1 in none"}, self.groups);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<GroupsResult> groups(const Groups& in) {
  JAMBLINE_TRY(check_points(in.points, 1));
  GroupsResult out;
  out.groups = trade::dbscan_groups(in.points, in.reach_mm, in.least_marks);
  out.basis.method = "DBSCAN, Ester et al., 1996.";
  out.basis.term("points", static_cast<double>(in.points.size()), "", trade::measured);
  out.basis.term("reach", in.reach_mm, "mm", trade::entered);
  out.basis.term("least marks", in.least_marks, "", trade::entered);
  return out;
}

Groups groups_example() {
  return {{{210, 240}, {255, 262}, {231, 301}, {284, 318}, {640, 910}, {1010, 720}}, 120, 3};
}

// 2) The limits of a chart.

struct RateLimits {
  double mean_rate{};
  double exposure{};
  trade::LimitForm form{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "mean_rate", .doc = "counts a unit", .min = 0, .max = 1e6}, self.mean_rate);
    visit(Field{.name = "exposure", .doc = "units of this point", .min = 0.001, .max = 1000},
          self.exposure);
    visit(Field{.name = "form"}, self.form);
  }
};

struct LimitsResult {
  trade::ChartLimits limits;
  trade::Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "limits"}, self.limits);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<LimitsResult> limits_of_rate(const RateLimits& in) {
  LimitsResult out{trade::rate_limits(in.mean_rate, in.exposure, in.form), {}};
  out.basis.method = in.form == trade::LimitForm::ThreeSigma
                         ? "Mean and three roots of mean over exposure (u-chart; c with 1)."
                         : "The last counts that come more often than 0.00135 at each side.";
  out.basis.term("mean rate", in.mean_rate, "", trade::entered);
  out.basis.term("exposure", in.exposure, "", trade::entered);
  out.basis.term("low", out.limits.low, "", "NIST/SEMATECH e-Handbook 6.3.3, 2012");
  out.basis.term("high", out.limits.high, "", "NIST/SEMATECH e-Handbook 6.3.3, 2012");
  return out;
}

RateLimits rate_limits_example() {
  return {2.4, 3.5, trade::LimitForm::ExactPoisson};
}

struct ShareLimits {
  double mean_share{};
  double tried{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "mean_share", .min = 0, .max = 1}, self.mean_share);
    visit(Field{.name = "tried", .min = 1, .max = 1e9}, self.tried);
  }
};

Result<LimitsResult> limits_of_share(const ShareLimits& in) {
  LimitsResult out{trade::share_limits(in.mean_share, in.tried), {}};
  out.basis.method = "Mean share and three roots of share x rest over tried (p-chart).";
  out.basis.term("mean share", in.mean_share, "", trade::entered);
  out.basis.term("tried", in.tried, "", trade::entered);
  out.basis.term("low", out.limits.low, "", "NIST/SEMATECH e-Handbook 6.3.3, 2012");
  out.basis.term("high", out.limits.high, "", "NIST/SEMATECH e-Handbook 6.3.3, 2012");
  return out;
}

ShareLimits share_limits_example() {
  return {0.18, 40};
}
}  // namespace

std::vector<Calculation> dirt_calculations() {
  return {
      calculation<&trade::dirt_pattern, &pattern_example>(
          "dirt-pattern", "marks of one car: chance, or signs that point to something"),
      calculation<&trade::dirt_chart, &chart_example>(
          "dirt-chart", "marks a square meter over the jobs, and what events changed"),
      calculation<&spacing, &spacing_example>(
          "spacing", "mean nearest distance and the indices of Clark and Evans, and Donnelly"),
      calculation<&groups, &groups_example>("groups", "which marks lie together (DBSCAN)"),
      calculation<&limits_of_rate, &rate_limits_example>("rate-limits",
                                                         "limits of a u- or c-chart for one point"),
      calculation<&limits_of_share, &share_limits_example>("share-limits",
                                                           "limits of a p-chart for one point"),
  };
}

}  // namespace jambline::app
