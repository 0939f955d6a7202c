#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <map>
#include <rapidcheck/gtest.h>
#include <set>

#include "tests/trade/whole.h"
#include "trade/correction_plan.h"

namespace jambline::trade {
namespace {

double length(int from_mm, int to_mm) {
  return whole(from_mm * 10, to_mm * 10) / 10.0;
}

// A panel with a bite out of it, its marks anywhere on it, at the very edge too.
PlanPanel some_panel(int number) {
  PlanPanel out;
  out.panel = "panel " + std::to_string(number);
  const double width = length(200, 1500), height = length(200, 1000);
  const double bite_x = width * *rc::gen::element(0.3, 0.5, 0.8);
  const double bite_y = height * *rc::gen::element(0.2, 0.6, 1.0);
  out.outline = {{0, 0},           {width, 0},       {width, bite_y},
                 {bite_x, bite_y}, {bite_x, height}, {0, height}};
  if (bite_y == height) out.outline = {{0, 0}, {width, 0}, {width, height}, {0, height}};
  if (*rc::gen::arbitrary<bool>())
    out.body_lines.push_back({{{0, height * 0.4}, {bite_x, height * 0.45}}});
  if (whole(0, 4) == 0) out.clear_fade.push_back({{{0, 0}, {0, height}}});
  out.stands_at = {length(-3000, 3000), length(-3000, 3000)};
  out.may_be_cut = whole(0, 5) > 0;
  out.plastic = *rc::gen::arbitrary<bool>();
  const int wanted = whole(0, 14);
  for (int i = 0; i < wanted; ++i) {
    PlanMark mark{"mark " + std::to_string(i),
                  width * whole(0, 101) / 100,
                  height * whole(0, 101) / 100,
                  static_cast<MarkWork>(whole(0, 6)),
                  {}};
    if (whole(0, 4) == 0) mark.proved_start = static_cast<Round>(whole(0, 5));
    if (contains(Polygon{out.outline}, {mark.x_mm, mark.y_mm})) out.marks.push_back(mark);
  }
  return out;
}

CorrectionPlan some_plan() {
  CorrectionPlan out;
  const int panels = whole(1, 7);
  for (int i = 0; i < panels; ++i) out.panels.push_back(some_panel(i));
  std::vector<RoundRule> rounds;
  for (const RoundRule& rule : usual_rounds())
    if (whole(0, 4) > 0) rounds.push_back(rule);
  if (!rounds.empty()) out.rounds = rounds;
  out.one_panel_at_a_time = *rc::gen::arbitrary<bool>();
  return out;
}

RC_GTEST_PROP(PlanProperty, EveryMarkIsInOneAreaARoundOrLeftOutByName, ()) {
  const CorrectionPlan plan = some_plan();
  const auto result = correction_plan(plan);
  RC_ASSERT(result.has_value());
  using Name = std::pair<std::string, std::string>;
  std::map<std::pair<Round, Name>, int> times;
  std::set<Name> planned, left_out;
  for (const PlanStation& station : result->stations)
    for (const PlanArea& area : station.areas)
      for (const std::string& mark : area.marks) {
        ++times[{station.round, {station.panel, mark}}];
        planned.insert({station.panel, mark});
      }
  for (const auto& [where, count] : times) RC_ASSERT(count == 1);
  for (const PlanLeftOut& one : result->left_out)
    RC_ASSERT(left_out.insert({one.panel, one.mark}).second);
  std::size_t all = 0;
  for (const PlanPanel& panel : plan.panels)
    for (const PlanMark& mark : panel.marks) {
      ++all;
      RC_ASSERT(
          planned.count({panel.panel, mark.mark}) + left_out.count({panel.panel, mark.mark}) == 1U);
    }
  RC_ASSERT(planned.size() + left_out.size() == all);
  // Once begun, a mark is in every finer round up to the last one.
  for (const auto& [where, count] : times)
    for (const RoundRule& rule : plan.rounds)
      if (rule.round > where.first) RC_ASSERT(times.count({rule.round, where.second}) == 1U);
}

// Counted again on a grid of 4 mm: circles of the area's marks, on the panel, off edges and lines.
RC_GTEST_PROP(PlanProperty, AreasLieInsideEdgesAndLines, ()) {
  CorrectionPlan plan;
  plan.panels = {some_panel(0)};
  const PlanPanel& panel = plan.panels.front();
  const Polygon outline{panel.outline};
  const auto result = correction_plan(plan);
  RC_ASSERT(result.has_value());
  for (const PlanStation& station : result->stations) {
    const auto rule = std::find_if(plan.rounds.begin(), plan.rounds.end(),
                                   [&](const auto& one) { return one.round == station.round; });
    for (const PlanArea& area : station.areas) {
      const double radius = area.by_hand ? plan.rounds.front().radius_mm : rule->radius_mm;
      std::vector<Point_mm> middles;
      for (const PlanMark& mark : panel.marks)
        if (std::count(area.marks.begin(), area.marks.end(), mark.mark) > 0)
          middles.push_back({mark.x_mm, mark.y_mm});
      constexpr double step = 4;
      double grid = 0;
      const Box_mm box = bounds(panel.outline);
      for (double x = step / 2; x < box.high.x_mm; x += step)
        for (double y = step / 2; y < box.high.y_mm; y += step) {
          const Point_mm at{x, y};
          if (std::none_of(middles.begin(), middles.end(),
                           [&](const Point_mm& one) { return distance_mm(one, at) <= radius; }) ||
              !contains(outline, at))
            continue;
          double clear = distance_to_edge_mm(at, outline);
          for (const PanelLine& line : panel.body_lines)
            clear = std::min(clear, distance_to_line_mm(at, line.points));
          if (area.by_hand || clear >= plan.keep_off_mm) grid += step * step;
        }
      // A cell's width along the edges of the circles.
      RC_ASSERT(std::abs(area.area_mm2 - grid) <=
                0.02 * grid + 2 * step * radius * static_cast<double>(middles.size()));
      RC_ASSERT(area.area_mm2 <= area_mm2(outline) * 1.001);
    }
  }
}

RC_GTEST_PROP(PlanProperty, MinutesAndChangesAddUp, ()) {
  const CorrectionPlan plan = some_plan();
  const auto result = correction_plan(plan);
  RC_ASSERT(result.has_value());
  double minutes = plan.change_min * result->changes;
  int changes = 0;
  for (std::size_t i = 0; i < result->stations.size(); ++i) {
    const PlanStation& one = result->stations[i];
    for (const PlanArea& area : one.areas) minutes += area.minutes;
    if (one.clean_down) minutes += plan.clean_down_min;
    changes += i > 0 && result->stations[i - 1].round != one.round;
    RC_ASSERT(!one.areas.empty());
  }
  RC_ASSERT(std::abs(minutes - result->minutes) < 1e-6);
  RC_ASSERT(changes == result->changes);
}

RC_GTEST_PROP(PlanProperty, RoundByRoundNeverChangesPadsMoreThanPanelByPanel, ()) {
  CorrectionPlan plan = some_plan();
  plan.one_panel_at_a_time = false;
  const auto by_round = correction_plan(plan);
  plan.one_panel_at_a_time = true;
  const auto by_panel = correction_plan(plan);
  RC_ASSERT(by_round.has_value() && by_panel.has_value());
  RC_ASSERT(by_round->changes <= by_panel->changes);
}

double walked(const std::vector<Point_mm>& places, const std::vector<std::size_t>& order) {
  double out = 0;
  for (std::size_t i = 1; i < order.size(); ++i)
    out += distance_mm(places[order[i - 1]], places[order[i]]);
  return out;
}

RC_GTEST_PROP(WalkProperty, IsAsShortAsTheShortestOfAllOrders, ()) {
  const auto count = whole<std::size_t>(1, 8);
  std::vector<Point_mm> places;
  for (std::size_t i = 0; i < count; ++i) places.push_back({length(-3000, 3000), length(0, 3000)});
  const auto found = shortest_walk(places);
  std::vector<std::size_t> order(count);
  for (std::size_t i = 0; i < count; ++i) order[i] = i;
  RC_ASSERT(std::is_permutation(order.begin(), order.end(), found.begin(), found.end()));
  double least = walked(places, order);
  while (std::next_permutation(order.begin(), order.end()))
    least = std::min(least, walked(places, order));
  RC_ASSERT(std::abs(walked(places, found) - least) < 1e-6);
}

RC_GTEST_PROP(WalkProperty, ManyPlacesAreAllVisitedOnce, ()) {
  const auto count = whole<std::size_t>(13, 41);
  std::vector<Point_mm> places;
  for (std::size_t i = 0; i < count; ++i) places.push_back({length(-3000, 3000), length(0, 3000)});
  const auto found = shortest_walk(places);
  RC_ASSERT(std::set<std::size_t>(found.begin(), found.end()).size() == count);
  RC_ASSERT(found.size() == count);
}

// By the middles of cells of a tenth of the least radius.
RC_GTEST_PROP(CirclesProperty, TheirUnionIsThatOfAFineGrid, ()) {
  const auto count = whole(1, 7);
  std::vector<Circle_mm> circles;
  for (int i = 0; i < count; ++i)
    circles.push_back({{length(0, 200), length(0, 200)}, length(20, 120)});
  if (whole(0, 4) == 0) circles.push_back(circles.front());
  constexpr double step = 1;
  double grid = 0;
  for (double x = -120 + step / 2; x < 320; x += step)
    for (double y = -120 + step / 2; y < 320; y += step)
      if (std::any_of(circles.begin(), circles.end(), [&](const Circle_mm& one) {
            return distance_mm(one.center, {x, y}) <= one.radius_mm;
          }))
        grid += step * step;
  RC_ASSERT(std::abs(circles_union_area_mm2(circles) - grid) < 0.01 * grid + 20);
}

}  // namespace
}  // namespace jambline::trade
