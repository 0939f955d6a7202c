#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <rapidcheck/gtest.h>

#include "tests/trade/whole.h"
#include "trade/clearance.h"
#include "trade/dirt_pattern.h"
#include "trade/film.h"
#include "trade/panel_fit.h"
#include "trade/points.h"
#include "trade/ready_by.h"

namespace jambline::trade {
namespace {

// A number with three places between two whole ones.
double real(int low, int high) {
  return whole(low * 1000, high * 1000 + 1) / 1000.0;
}

RC_GTEST_PROP(FilmProperty, WhatIsLeftNeverRisesWithAStep, ()) {
  FilmBudget in;
  const int source = whole(0, 3);
  if (source == 0) in.clear_um = {real(20, 150), real(20, 150)};
  if (source == 1) {
    in.total_after_um = {real(180, 300)};
    in.total_before_base_um = {real(60, 150)};
  }
  in.edge_thinner_percent = real(0, 60);
  in.taken_before_um = real(0, 20);
  const int steps = whole(1, 7);
  for (int i = 0; i < steps; ++i)
    in.steps.push_back({"step " + std::to_string(i), {real(0, 8), real(0, 3)}});
  const auto result = film_budget(in);
  RC_ASSERT(result.has_value());
  RC_ASSERT(result->after.size() == in.steps.size());
  Spread_um left = result->clear;
  Spread_um taken{in.taken_before_um, 0};
  for (std::size_t i = 0; i < result->after.size(); ++i) {
    const auto& now = result->after[i];
    RC_ASSERT(now.left.mean_um <= left.mean_um + 1e-9);
    RC_ASSERT(now.left.sd_um >= left.sd_um - 1e-9);
    RC_ASSERT(now.taken.mean_um >= taken.mean_um - 1e-9);
    RC_ASSERT(std::abs(left.mean_um - now.left.mean_um - in.steps[i].removal.mean_um) < 1e-9);
    left = now.left;
    taken = now.taken;
  }
}

RC_GTEST_PROP(ClearanceProperty, ItsTimeFallsWithTheAirflow, ()) {
  Clearance in;
  in.volume_m3 = real(20, 400);
  in.mixing_factor = real(1, 10);
  in.removed_percent = real(50, 99);
  const double less = real(100, 20000);
  const double more = less + real(1, 20000);
  const auto overdue = *rc::gen::arbitrary<bool>();
  if (overdue) in.smoke_test = SmokeTest{real(1, 60), 5000, 425};
  in.exhaust_m3_h = less;
  const auto slow = clearance_time(in);
  in.exhaust_m3_h = more;
  const auto fast = clearance_time(in);
  RC_ASSERT(slow.has_value() && fast.has_value());
  RC_ASSERT(fast->minutes <= slow->minutes);
  if (!overdue) RC_ASSERT(fast->minutes < slow->minutes);
}

PanelFit some_fit() {
  PanelFit in;
  in.flush = *rc::gen::arbitrary<bool>();
  const int points = whole(2, 10);
  const int fasteners = whole(1, 6);
  for (int i = 0; i < points; ++i)
    in.points.push_back({"point " + std::to_string(i), real(-1500, 1500), real(-1500, 1500),
                         *rc::gen::element(0.0, 90.0, 180.0, 270.0, 37.5), real(0, 12), real(2, 6),
                         *rc::gen::element(1.0, 1.0, 1000.0, 0.001, 5.0)});
  for (int i = 0; i < fasteners; ++i)
    in.fasteners.push_back({"fastener " + std::to_string(i), real(-1500, 1500), real(-1500, 1500),
                            *rc::gen::element(0.0, 1.0, 3.0, 20.0),
                            *rc::gen::element(0.0, 2.0, 5.0)});
  return in;
}

// What a move makes of a point's gap or height, from the result's own shifts and turn.
double moved(const PanelFit& in, const FitPoint& point, double a, double b, double c) {
  if (in.flush) return point.found_mm + a + b * point.x_mm / 1000 + c * point.y_mm / 1000;
  const double turn = c * std::numbers::pi / 180;
  const double toward = point.direction_deg * std::numbers::pi / 180;
  const double dx = a - turn * point.y_mm, dy = b + turn * point.x_mm;
  return point.found_mm - dx * std::cos(toward) - dy * std::sin(toward);
}

RC_GTEST_PROP(PanelFitProperty, PredictedGapsAreThoseAfterTheMoveAndSlotsHold, ()) {
  const PanelFit in = some_fit();
  const auto result = panel_fit(in);
  RC_ASSERT(result.has_value());
  for (std::size_t i = 0; i < in.points.size(); ++i) {
    const FitPoint& point = in.points[i];
    const double after = moved(in, point, result->shift_x_mm, result->shift_y_mm, result->turn_deg);
    RC_ASSERT(std::abs(after - result->points[i].after_mm) < 1e-7);
    RC_ASSERT(std::abs(after - point.wanted_mm - result->points[i].off_mm) < 1e-7);
    if (in.flush) continue;
    // Turned for real, not by its tangent: off by the square of the turn at most.
    const double turn = result->turn_deg * std::numbers::pi / 180;
    const double toward = point.direction_deg * std::numbers::pi / 180;
    const double x = std::cos(turn) * point.x_mm - std::sin(turn) * point.y_mm + result->shift_x_mm;
    const double y = std::sin(turn) * point.x_mm + std::cos(turn) * point.y_mm + result->shift_y_mm;
    const double real_gap =
        point.found_mm - (x - point.x_mm) * std::cos(toward) - (y - point.y_mm) * std::sin(toward);
    RC_ASSERT(std::abs(real_gap - result->points[i].after_mm) <=
              turn * turn * std::hypot(point.x_mm, point.y_mm) + 1e-7);
  }
  for (std::size_t i = 0; i < in.fasteners.size(); ++i) {
    RC_ASSERT(std::abs(result->moves[i].x_mm) <= in.fasteners[i].travel_x_mm + 1e-6);
    if (!in.flush) RC_ASSERT(std::abs(result->moves[i].y_mm) <= in.fasteners[i].travel_y_mm + 1e-6);
  }
}

// No move within the slots that is tried at random leaves less than the one given.
RC_GTEST_PROP(PanelFitProperty, NoMoveWithinTheSlotsIsBetter, ()) {
  const PanelFit in = some_fit();
  const auto result = panel_fit(in);
  RC_ASSERT(result.has_value());
  const auto left = [&](double a, double b, double c) {
    double sum = 0, weight = 0;
    for (const FitPoint& point : in.points) {
      const double off = moved(in, point, a, b, c) - point.wanted_mm;
      sum += point.weight * off * off;
      weight += point.weight;
    }
    return std::sqrt(sum / weight);
  };
  const double given = left(result->shift_x_mm, result->shift_y_mm, result->turn_deg);
  RC_ASSERT(std::abs(given - result->rms_mm) < 1e-7);
  Draws draws(*rc::gen::arbitrary<std::uint64_t>());
  for (int i = 0; i < 300; ++i) {
    // Half of them near the answer.
    const bool near = i % 2 == 0;
    const double size = near ? 0.3 : 10;
    const double a = (near ? result->shift_x_mm : 0) + draws.between(-size, size);
    const double b = (near ? result->shift_y_mm : 0) + draws.between(-size, size);
    const double c = (near ? result->turn_deg : 0) + draws.between(-size, size) / 10;
    const bool inside =
        std::all_of(in.fasteners.begin(), in.fasteners.end(), [&](const FitFastener& one) {
          if (in.flush)
            return std::abs(a + b * one.x_mm / 1000 + c * one.y_mm / 1000) <= one.travel_x_mm;
          const double turn = c * std::numbers::pi / 180;
          return std::abs(a - turn * one.y_mm) <= one.travel_x_mm &&
                 std::abs(b + turn * one.x_mm) <= one.travel_y_mm;
        });
    if (inside) RC_ASSERT(left(a, b, c) >= given - 1e-6);
  }
}

ReadyBy some_work() {
  ReadyBy in;
  in.now_min = real(0, 2000);
  in.trials = 200;
  in.seed = *rc::gen::arbitrary<std::uint64_t>();
  const int items = whole(1, 12);
  for (int i = 0; i < items; ++i) {
    WorkItem one{"work " + std::to_string(i), real(0, 200), 0, 0, *rc::gen::arbitrary<bool>(), {}};
    one.likely_min = one.least_min + real(0, 100);
    one.most_min = one.likely_min + real(0, 300);
    for (int before = 0; before < i; ++before)
      if (whole(0, 3) == 0) one.after.push_back("work " + std::to_string(before));
    in.work.push_back(one);
  }
  if (*rc::gen::arbitrary<bool>())
    for (int day = 0; day < 60; ++day)
      if (day % 7 < 5) in.hours.push_back({day * 1440.0 + 450, day * 1440.0 + 1020});
  return in;
}

RC_GTEST_PROP(ReadyByProperty, ItIsNeverEarlierThanTheLeastDurationsAllow, ()) {
  const ReadyBy in = some_work();
  const auto result = ready_by(in);
  RC_ASSERT(result.has_value());
  // The longest chain of least durations, as if the shop never closed.
  std::vector<double> done(in.work.size());
  double longest = 0, likely = 0;
  std::vector<double> likely_done(in.work.size());
  for (std::size_t i = 0; i < in.work.size(); ++i) {
    for (const std::string& name : in.work[i].after) {
      const auto before = static_cast<std::size_t>(std::stoi(name.substr(5)));
      done[i] = std::max(done[i], done[before]);
      likely_done[i] = std::max(likely_done[i], likely_done[before]);
    }
    done[i] += in.work[i].least_min;
    likely_done[i] += in.work[i].likely_min;
    longest = std::max(longest, done[i]);
    likely = std::max(likely, likely_done[i]);
  }
  RC_ASSERT(std::abs(result->length_min - likely) < 1e-6);
  RC_ASSERT(result->earliest_min >= in.now_min + longest - 1e-6);
  RC_ASSERT(result->likely_min >= result->earliest_min - 1e-6);
  RC_ASSERT(*result->p10_min >= result->earliest_min - 1e-6);
  RC_ASSERT(*result->p10_min <= *result->p50_min);
  RC_ASSERT(*result->p50_min <= *result->p90_min);
  for (const WorkTimes& one : result->work) {
    RC_ASSERT(one.total_float_min >= -1e-6);
    RC_ASSERT(one.free_float_min >= -1e-6);
    RC_ASSERT(one.free_float_min <= one.total_float_min + 1e-6);
  }
  RC_ASSERT(std::any_of(result->work.begin(), result->work.end(),
                        [](const WorkTimes& one) { return one.critical; }));
}

RC_GTEST_PROP(ReadyByProperty, TheSameSeedForecastsTheSame, ()) {
  const ReadyBy in = some_work();
  const auto once = ready_by(in);
  const auto twice = ready_by(in);
  RC_ASSERT(once.has_value() && twice.has_value());
  RC_ASSERT(once->p10_min == twice->p10_min);
  RC_ASSERT(once->p50_min == twice->p50_min);
  RC_ASSERT(once->p90_min == twice->p90_min);
}

RC_GTEST_PROP(HolmProperty, ItNeverMakesAChanceSmaller, ()) {
  std::vector<double> raw;
  const int count = whole(1, 20);
  for (int i = 0; i < count; ++i) raw.push_back(real(0, 1));
  const auto corrected = holm(raw);
  for (std::size_t i = 0; i < raw.size(); ++i) {
    RC_ASSERT(corrected[i] >= raw[i] && corrected[i] <= 1);
    // And never more than for the plain product with how many there are.
    RC_ASSERT(corrected[i] <= std::min(1.0, raw[i] * count) + 1e-12);
    for (std::size_t k = 0; k < raw.size(); ++k)
      if (raw[i] < raw[k]) RC_ASSERT(corrected[i] <= corrected[k]);
  }
}

DirtPattern some_car() {
  DirtPattern car;
  car.patterns = 99;
  car.seed = *rc::gen::arbitrary<std::uint64_t>();
  const int panels = whole(1, 6);
  for (int i = 0; i < panels; ++i) {
    DirtPanel panel;
    panel.panel = "panel " + std::to_string(i);
    const double width = real(300, 1500), height = real(300, 1000);
    panel.outline = {{0, 0}, {width, 0}, {width, height}, {width / 2, height * 0.8}, {0, height}};
    panel.lie = static_cast<Lie>(whole(0, 3));
    panel.plastic = *rc::gen::arbitrary<bool>();
    panel.sprayed = i + 1;
    panel.seams = {{{{0, 0}, {width, 0}}}};
    const int marks = whole(0, 20);
    for (int k = 0; k < marks; ++k)
      panel.marks.push_back({width * real(0, 1), height * 0.8 * real(0, 1)});
    car.panels.push_back(std::move(panel));
  }
  if (*rc::gen::arbitrary<bool>()) car.history = FlatHistory{40, 10, 30, 20};
  return car;
}

RC_GTEST_PROP(DirtProperty, TheOrderOfPanelsAndMarksDoesNotMatter, ()) {
  const DirtPattern car = some_car();
  DirtPattern mixed = car;
  Draws draws(*rc::gen::arbitrary<std::uint64_t>());
  draws.shuffle(mixed.panels);
  for (DirtPanel& panel : mixed.panels) draws.shuffle(panel.marks);
  const auto one = dirt_pattern(car);
  const auto other = dirt_pattern(mixed);
  RC_ASSERT(one.has_value() && other.has_value());
  RC_ASSERT(one->word == other->word);
  RC_ASSERT(one->evidence.size() == other->evidence.size());
  for (const DirtEvidence& a : one->evidence) {
    const auto b =
        std::find_if(other->evidence.begin(), other->evidence.end(),
                     [&](const DirtEvidence& e) { return e.sign == a.sign && e.panel == a.panel; });
    RC_ASSERT(b != other->evidence.end());
    RC_ASSERT(std::abs(a.chance - b->chance) < 1e-12);
    RC_ASSERT(std::abs(a.holm_chance - b->holm_chance) < 1e-10);
    RC_ASSERT(std::abs(a.seen - b->seen) < 1e-9);
    RC_ASSERT(std::abs(a.expected - b->expected) < 1e-9);
    if (a.cluster) RC_ASSERT(b->cluster && a.cluster->center == b->cluster->center);
  }
  // Marks of one group stay in one group.
  for (std::size_t i = 0; i < car.panels.size(); ++i) {
    const auto where = static_cast<std::size_t>(
        std::find_if(mixed.panels.begin(), mixed.panels.end(),
                     [&](const DirtPanel& p) { return p.panel == car.panels[i].panel; }) -
        mixed.panels.begin());
    const auto& marks = car.panels[i].marks;
    const auto group_there = [&](const Point_mm& mark) {
      const auto& all = mixed.panels[where].marks;
      const auto at = std::find(all.begin(), all.end(), mark) - all.begin();
      return other->panels[where].groups[static_cast<std::size_t>(at)];
    };
    const auto& here = one->panels[i].groups;
    for (std::size_t a = 0; a < marks.size(); ++a) {
      RC_ASSERT((here[a] == no_group) == (group_there(marks[a]) == no_group));
      for (std::size_t b = a + 1; b < marks.size(); ++b)
        RC_ASSERT((here[a] == here[b]) == (group_there(marks[a]) == group_there(marks[b])));
    }
  }
}

RC_GTEST_PROP(DirtProperty, TheSameSeedSaysTheSame, ()) {
  const DirtPattern car = some_car();
  const auto one = dirt_pattern(car);
  const auto other = dirt_pattern(car);
  RC_ASSERT(one.has_value() && other.has_value());
  RC_ASSERT(one->evidence.size() == other->evidence.size());
  for (std::size_t i = 0; i < one->evidence.size(); ++i) {
    RC_ASSERT(one->evidence[i].sign == other->evidence[i].sign);
    RC_ASSERT(one->evidence[i].chance == other->evidence[i].chance);
    RC_ASSERT(one->evidence[i].chance > 0 && one->evidence[i].chance <= 1);
    RC_ASSERT(one->evidence[i].holm_chance >= one->evidence[i].chance);
    if (i > 0) RC_ASSERT(one->evidence[i - 1].chance <= one->evidence[i].chance);
  }
}

RC_GTEST_PROP(PointsProperty, SpacingIsTheSameScaledMovedAndTurned, ()) {
  std::vector<Point_mm> points;
  const int count = whole(2, 30);
  for (int i = 0; i < count; ++i) points.push_back({real(0, 1200), real(0, 1000)});
  const double scale = real(1, 50) / 10;
  const Placement place{*rc::gen::arbitrary<bool>(),
                        whole(0, 4),
                        real(0, 90),
                        {real(-5000, 5000), real(-5000, 5000)}};
  std::vector<Point_mm> moved;
  for (const Point_mm& one : place.apply(points))
    moved.push_back({one.x_mm * scale, one.y_mm * scale});
  const double area = 1.2e6;
  const double here = clark_evans_index(points, area);
  const double there = clark_evans_index(moved, area * scale * scale);
  RC_ASSERT(std::abs(here - there) < 1e-6);
}

}  // namespace
}  // namespace jambline::trade
