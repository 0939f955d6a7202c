#include "trade/control_chart.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "trade/refusal.h"

namespace jambline::trade {

namespace {
constexpr double tail = 0.00135;
constexpr int run_length = 8;
constexpr int jobs_to_say = 10;

Status checked(const DirtChart& in) {
  if (in.jobs.empty()) return fail(refusal(Code::Missing, "jobs", "no job"));
  if (in.jobs.size() > 100000) return fail(refusal(Code::TooLarge, "jobs", "100,000 at most"));
  if (in.events.size() > 1000) return fail(refusal(Code::TooLarge, "events", "1,000 at most"));
  JAMBLINE_TRY(need("confidence", in.confidence, 0.5, 0.999, "0.5 to 0.999"));
  for (std::size_t i = 0; i < in.jobs.size(); ++i) {
    JAMBLINE_TRY(need(item("jobs", i, "area_m2"), in.jobs[i].area_m2, 0.01, 1000, "over 0"));
    JAMBLINE_TRY(need(item("jobs", i, "marks"), static_cast<double>(in.jobs[i].marks), 0, 1e6,
                      "not negative"));
    JAMBLINE_TRY(need(item("jobs", i, "day"), in.jobs[i].day, -1e7, 1e7, "a day"));
    if (i > 0 && in.jobs[i].day < in.jobs[i - 1].day)
      return fail(refusal(Code::Malformed, item("jobs", i, "day"), "before the one before it"));
  }
  for (std::size_t i = 0; i < in.events.size(); ++i) {
    JAMBLINE_TRY(need(item("events", i, "day"), in.events[i].day, -1e7, 1e7, "a day"));
    if (i > 0 && in.events[i].day < in.events[i - 1].day)
      return fail(refusal(Code::Malformed, item("events", i, "day"), "before the one before it"));
  }
  return {};
}

struct Sum {
  std::int64_t marks = 0;
  double area_m2 = 0;
  int jobs = 0;
  void add(const ChartJob& job) {
    marks += job.marks;
    area_m2 += job.area_m2;
    ++jobs;
  }
  double rate() const { return static_cast<double>(marks) / area_m2; }
};

// The first of low .. high for which it holds, by halving; it holds for all after that one.
template <class Holds>
std::int64_t first_that(std::int64_t low, std::int64_t high, Holds holds) {
  while (low < high) {
    const std::int64_t half = std::midpoint(low, high);
    if (holds(half))
      high = half;
    else
      low = half + 1;
  }
  return low;
}

void mark_signals(std::vector<ChartPoint>& points) {
  int run = 0;  // positive above, negative below
  int segment = -1;
  for (ChartPoint& point : points) {
    if (point.segment != segment) run = 0;
    segment = point.segment;
    const bool above = point.rate_m2 > point.limits.center;
    const bool below = point.rate_m2 < point.limits.center;
    run = above ? std::max(run, 0) + 1 : below ? std::min(run, 0) - 1 : 0;
    if (point.rate_m2 > point.limits.high)
      point.signal = ChartSignal::Above;
    else if (point.rate_m2 < point.limits.low)
      point.signal = ChartSignal::Below;
    else if (run >= run_length)
      point.signal = ChartSignal::RunAbove;
    else if (run <= -run_length)
      point.signal = ChartSignal::RunBelow;
  }
}
}  // namespace

ChartLimits rate_limits(double mean_rate, double exposure, LimitForm form) {
  if (form == LimitForm::ThreeSigma) {
    const double wide = 3 * std::sqrt(mean_rate / exposure);
    return {mean_rate, std::max(0.0, mean_rate - wide), mean_rate + wide};
  }
  // Counts that come as rarely as the tail, or less, are beyond: the limits are the last ones
  // inside.
  const double mean = mean_rate * exposure;
  const auto middle = static_cast<std::int64_t>(std::floor(mean));
  const std::int64_t wide = 10 + static_cast<std::int64_t>(10 * std::sqrt(mean));
  const std::int64_t high = first_that(middle, middle + wide, [&](std::int64_t count) {
    return poisson_at_least(count + 1, mean) <= tail;
  });
  const std::int64_t low =
      first_that(std::max<std::int64_t>(0, middle - wide), middle,
                 [&](std::int64_t count) { return poisson_at_most(count, mean) > tail; });
  return {mean_rate, static_cast<double>(low) / exposure, static_cast<double>(high) / exposure};
}

ChartLimits share_limits(double mean_share, double tried) {
  const double wide = 3 * std::sqrt(mean_share * (1 - mean_share) / tried);
  return {mean_share, std::max(0.0, mean_share - wide), std::min(1.0, mean_share + wide)};
}

Result<DirtChartResult> dirt_chart(const DirtChart& in) {
  JAMBLINE_TRY(checked(in));
  DirtChartResult out;
  const auto segment_of = [&](double day) {
    return static_cast<std::size_t>(
        std::count_if(in.events.begin(), in.events.end(),
                      [&](const ChartEvent& event) { return event.day <= day; }));
  };
  std::vector<Sum> segments(in.events.size() + 1);
  for (const ChartJob& job : in.jobs) segments[segment_of(job.day)].add(job);
  for (const ChartJob& job : in.jobs) {
    const std::size_t segment = segment_of(job.day);
    out.points.push_back({static_cast<double>(job.marks) / job.area_m2,
                          rate_limits(segments[segment].rate(), job.area_m2, in.form),
                          ChartSignal::None, static_cast<int>(segment)});
  }
  mark_signals(out.points);

  std::vector<double> chances;
  for (std::size_t i = 0; i < in.events.size(); ++i) {
    const Sum& before = segments[i];
    const Sum& after = segments[i + 1];
    if (before.jobs == 0 || after.jobs == 0) continue;
    const RateRatio ratio =
        rate_ratio(after.marks, after.area_m2, before.marks, before.area_m2, in.confidence);
    out.effects.push_back({in.events[i].name, in.events[i].day, before.jobs, after.jobs,
                           ratio.ratio, ratio.interval, ratio.unbounded, ratio.chance, 1,
                           std::min(before.jobs, after.jobs) >= jobs_to_say});
    chances.push_back(ratio.chance);
  }
  const auto corrected = holm(chances);
  for (std::size_t i = 0; i < corrected.size(); ++i) out.effects[i].holm_chance = corrected[i];

  out.basis.method =
      "u-chart by segments between events; each event by the exact ratio of rates, Holm.";
  out.basis.term("jobs", static_cast<double>(in.jobs.size()), "", measured);
  out.basis.term("events", static_cast<double>(in.events.size()), "", entered);
  if (in.form == LimitForm::ExactPoisson)
    out.basis.term("chance beyond each limit", tail, "", "three sigma of a normal value, computed");
  else
    out.basis.term("limits", 3, "sigma", "NIST/SEMATECH e-Handbook 6.3.3, 2012");
  out.basis.term("confidence of the intervals", in.confidence, "", "Clopper and Pearson, 1934");
  out.basis.term("run", run_length, "jobs", common_practice);
  out.basis.term("an event is judged from", jobs_to_say, "jobs before and after", common_practice);
  for (std::size_t i = 0; i < segments.size(); ++i)
    if (segments[i].jobs > 0) {
      const std::string name = ", segment " + std::to_string(i + 1);
      out.basis.term("marks" + name, static_cast<double>(segments[i].marks), "", measured);
      out.basis.term("area" + name, segments[i].area_m2, "m2", measured);
      out.basis.term("mean rate" + name, segments[i].rate(), "1/m2", computed);
    }
  return out;
}

}  // namespace jambline::trade
