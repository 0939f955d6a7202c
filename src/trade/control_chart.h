// trade/control_chart.h: marks per square meter over the jobs of a shop, and what events changed.
//
// Chart:   u-chart: the mean rate of a segment with limits for each job's own area. Exact limits
//          are Poisson tails of 0.00135 each side (what three sigma is for a normal); three-sigma
//          limits (NIST/SEMATECH e-Handbook 6.3.3) are for comparison with tables. A point on a
//          limit is not beyond it.
// Signals: beyond a limit; a run of 8 on one side of the mean (common run rule).
// Events:  the jobs before and after each (up to its neighbours) by the ratio of their rates,
//          exact interval and chance (probability.h), Holm over all events. It says that a rate
//          changed when the event was, not why; with fewer than 10 jobs before or after it
//          that is too early to say.
// Errors:  OutOfRange, Missing, Malformed (days going back), TooLarge (100,000 jobs, 1,000
//          events). Two jobs may share a day. Threads: pure.
#pragma once

#include <array>
#include <string_view>

#include "base/error.h"
#include "trade/basis.h"
#include "trade/probability.h"

namespace jambline::trade {

enum class LimitForm : std::uint8_t { ExactPoisson, ThreeSigma };
enum class ChartSignal : std::uint8_t { None, Above, Below, RunAbove, RunBelow };

struct ChartLimits {
  double center{};
  double low{};
  double high{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "center"}, self.center);
    visit(Field{.name = "low"}, self.low);
    visit(Field{.name = "high"}, self.high);
  }
};

// Counts per unit; a c-chart is exposure 1 throughout.
ChartLimits rate_limits(double mean_rate, double exposure, LimitForm form);
// Shares of so many tried: the p-chart, three sigma.
ChartLimits share_limits(double mean_share, double tried);

struct ChartJob {
  double day{};
  std::int64_t marks{};
  double area_m2{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "day", .unit = "d"}, self.day);
    visit(Field{.name = "marks", .min = 0, .max = 1e6}, self.marks);
    visit(Field{.name = "area_m2", .unit = "m2", .doc = "sprayed", .min = 0.01, .max = 1000},
          self.area_m2);
  }
};

struct ChartEvent {
  double day{};
  std::string name;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "day", .unit = "d", .doc = "jobs from this day on are after it"}, self.day);
    visit(Field{.name = "name"}, self.name);
  }
};

struct DirtChart {
  std::vector<ChartJob> jobs;  // by day
  std::vector<ChartEvent> events;
  LimitForm form = LimitForm::ExactPoisson;
  double confidence = 0.95;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "jobs"}, self.jobs);
    visit(Field{.name = "events"}, self.events);
    visit(Field{.name = "form"}, self.form);
    visit(Field{.name = "confidence", .min = 0.5, .max = 0.999}, self.confidence);
  }
};

struct ChartPoint {
  double rate_m2{};
  ChartLimits limits;
  ChartSignal signal{};
  int segment{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "rate_m2", .unit = "1/m2"}, self.rate_m2);
    visit(Field{.name = "limits"}, self.limits);
    visit(Field{.name = "signal"}, self.signal);
    visit(Field{.name = "segment"}, self.segment);
  }
};

struct EventEffect {
  std::string name;
  double day{};
  int jobs_before{};
  int jobs_after{};
  double ratio{};  // after over before; 0 when nothing was found after
  Interval interval;
  bool unbounded = false;  // nothing was found before
  double chance{};
  double holm_chance{};
  bool enough_jobs = false;  // 10 before and after at least

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "day", .unit = "d"}, self.day);
    visit(Field{.name = "jobs_before"}, self.jobs_before);
    visit(Field{.name = "jobs_after"}, self.jobs_after);
    visit(Field{.name = "ratio"}, self.ratio);
    visit(Field{.name = "interval"}, self.interval);
    visit(Field{.name = "unbounded"}, self.unbounded);
    visit(Field{.name = "chance"}, self.chance);
    visit(Field{.name = "holm_chance"}, self.holm_chance);
    visit(Field{.name = "enough_jobs"}, self.enough_jobs);
  }
};

struct DirtChartResult {
  std::vector<ChartPoint> points;    // one a job
  std::vector<EventEffect> effects;  // one an event that has jobs before and after
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "points"}, self.points);
    visit(Field{.name = "effects"}, self.effects);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<DirtChartResult> dirt_chart(const DirtChart& chart);

}  // namespace jambline::trade

template <>
inline constexpr auto jambline::enum_words<jambline::trade::LimitForm> =
    std::to_array<std::string_view>({"exact poisson", "three sigma"});
template <>
inline constexpr auto jambline::enum_words<jambline::trade::ChartSignal> =
    std::to_array<std::string_view>({"none", "above", "below", "run above", "run below"});
