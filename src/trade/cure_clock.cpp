#include "trade/cure_clock.h"

#include <algorithm>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>
#include <limits>
#include <numeric>

#include "trade/refusal.h"

namespace jambline::trade {

namespace {
constexpr double gas_constant = 8.314462618;
constexpr double never = std::numeric_limits<double>::infinity();

double kelvin(double celsius) {
  return celsius - absolute_zero_c;
}

std::vector<CurePoint> by_temperature(std::vector<CurePoint> points) {
  std::sort(points.begin(), points.end(),
            [](const CurePoint& a, const CurePoint& b) { return a.at_c < b.at_c; });
  return points;
}

Status check_points(const CureStep& step, std::size_t place) {
  const std::string list = "steps[" + std::to_string(place) + "].points";
  if (step.points.empty()) return fail(refusal(Code::Missing, list, "what the sheet says"));
  for (std::size_t i = 0; i < step.points.size(); ++i) {
    JAMBLINE_TRY(
        need(item(list.c_str(), i, "at_c"), step.points[i].at_c, -20, 200, "-20 to 200 C"));
    JAMBLINE_TRY(
        need(item(list.c_str(), i, "minutes"), step.points[i].minutes, 0.1, 1e6, "over 0"));
  }
  const auto sorted = by_temperature(step.points);
  for (std::size_t i = 1; i < sorted.size(); ++i) {
    if (sorted[i].at_c == sorted[i - 1].at_c)
      return fail(refusal(Code::Malformed, list, "two times at one temperature"));
    if (sorted[i].minutes > sorted[i - 1].minutes)
      return fail(
          refusal(Code::Malformed, list, "slower when warmer: the points contradict each other"));
  }
  return {};
}

Status checked(const CureClock& in) {
  if (in.steps.empty()) return fail(refusal(Code::Missing, "steps", "no milestone"));
  for (std::size_t i = 0; i < in.steps.size(); ++i) JAMBLINE_TRY(check_points(in.steps[i], i));
  if (in.readings.empty())
    return fail(refusal(Code::Missing, "readings", "no surface temperature"));
  double last = -1;
  for (std::size_t i = 0; i < in.readings.size(); ++i) {
    JAMBLINE_TRY(
        need(item("readings", i, "surface_c"), in.readings[i].surface_c, -20, 200, "-20 to 200 C"));
    JAMBLINE_TRY(need(item("readings", i, "at_min"), in.readings[i].at_min, 0, 1e6,
                      "not before the last coat"));
    if (in.readings[i].at_min <= last)
      return fail(
          refusal(Code::Malformed, item("readings", i, "at_min"), "not after the one before"));
    last = in.readings[i].at_min;
  }
  JAMBLINE_TRY(
      need("now_min", in.now_min, in.readings.front().at_min, 1e6, "not before the first reading"));
  JAMBLINE_TRY(need("reading_sd_c", in.reading_sd_c, 0, 30, "0 to 30 C"));
  JAMBLINE_TRY(need("heavy_factor", in.heavy_factor, 1, 10, "1 to 10"));
  JAMBLINE_TRY(need("surface_max_c", in.surface_max_c, 10, 60, "10 to 60 C"));
  return need("rest_after_bake_min", in.rest_after_bake_min, 0, 10000, "0 to 10,000 min");
}

double share_per_min(const std::vector<CurePoint>& sorted, double surface_c) {
  const double minutes = minutes_at(sorted, surface_c);
  return std::isinf(minutes) ? 0 : 1 / minutes;
}

// The share done over a straight piece of temperature, cut where the rate has corners.
double share_over(const std::vector<CurePoint>& sorted, double span_min, double from_c,
                  double to_c) {
  if (span_min <= 0) return 0;
  if (from_c == to_c) return span_min * share_per_min(sorted, from_c);
  std::vector<double> cuts{0, 1};
  for (const CurePoint& point : sorted) {
    const double at = (point.at_c - from_c) / (to_c - from_c);
    if (at > 0 && at < 1) cuts.push_back(at);
  }
  std::sort(cuts.begin(), cuts.end());
  double sum = 0;
  for (std::size_t i = 1; i < cuts.size(); ++i) {
    // Inside the piece, so that a corner belongs to the right side of it.
    const double inside = std::midpoint(cuts[i - 1], cuts[i]);
    const double middle_c = std::lerp(from_c, to_c, inside);
    if (middle_c < sorted.front().at_c) continue;
    const auto rate = [&](double at) {
      return share_per_min(sorted,
                           std::clamp(std::lerp(from_c, to_c, at), sorted.front().at_c, 1e6));
    };
    sum += span_min * boost::math::quadrature::gauss_kronrod<double, 15>::integrate(
                          rate, cuts[i - 1], cuts[i], 12, 1e-12);
  }
  return sum;
}

struct Progress {
  double share = 0;                   // until now
  std::optional<double> reached_min;  // within the readings
};

Progress share_until(const CureClock& in, const std::vector<CurePoint>& sorted, double warmer_c) {
  Progress out;
  const auto piece = [&](double from_min, double to_min, double from_c, double to_c) {
    const double more = share_over(sorted, to_min - from_min, from_c, to_c);
    if (out.share < 1 && out.share + more >= 1) {
      double low = from_min, high = to_min;  // the time of the crossing, by halving
      for (int i = 0; i < 60; ++i) {
        const double half = std::midpoint(low, high);
        const double half_c = std::lerp(from_c, to_c, (half - from_min) / (to_min - from_min));
        if (out.share + share_over(sorted, half - from_min, from_c, half_c) >= 1)
          high = half;
        else
          low = half;
      }
      out.reached_min = high;
    }
    out.share += more;
  };
  for (std::size_t i = 1; i < in.readings.size(); ++i) {
    const auto& a = in.readings[i - 1];
    const auto& b = in.readings[i];
    if (a.at_min >= in.now_min) return out;
    const double end = std::min(b.at_min, in.now_min);
    const double end_c =
        std::lerp(a.surface_c, b.surface_c, (end - a.at_min) / (b.at_min - a.at_min));
    piece(a.at_min, end, a.surface_c + warmer_c, end_c + warmer_c);
  }
  const auto& last = in.readings.back();
  if (in.now_min > last.at_min)
    piece(last.at_min, in.now_min, last.surface_c + warmer_c, last.surface_c + warmer_c);
  return out;
}

double surface_now(const CureClock& in) {
  for (std::size_t i = 1; i < in.readings.size(); ++i) {
    const auto& a = in.readings[i - 1];
    const auto& b = in.readings[i];
    if (in.now_min <= b.at_min)
      return std::lerp(a.surface_c, b.surface_c, (in.now_min - a.at_min) / (b.at_min - a.at_min));
  }
  return in.readings.back().surface_c;
}

std::optional<double> when(const CureClock& in, const std::vector<CurePoint>& sorted, double now_c,
                           double warmer_c) {
  const Progress progress = share_until(in, sorted, warmer_c);
  if (progress.reached_min) return progress.reached_min;
  const double rate = share_per_min(sorted, now_c + warmer_c);
  if (rate <= 0) return std::nullopt;
  return in.now_min + (1 - progress.share) / rate;
}

// What is done to the film has gates; what the film does by itself has none.
bool touches_film(CureMilestone milestone) {
  switch (milestone) {
    case CureMilestone::SandFrom:
    case CureMilestone::PolishFrom:
    case CureMilestone::LastPolish:
      return true;
    default:
      return false;
  }
}
}  // namespace

double minutes_at(const std::vector<CurePoint>& points, double surface_c) {
  const auto sorted = by_temperature(points);
  if (sorted.empty() || surface_c < sorted.front().at_c) return never;
  if (surface_c >= sorted.back().at_c) return sorted.back().minutes;
  const auto above =
      std::upper_bound(sorted.begin(), sorted.end(), surface_c,
                       [](double at, const CurePoint& point) { return at < point.at_c; });
  const CurePoint& hot = *above;
  const CurePoint& cold = *std::prev(above);
  const double part = (1 / kelvin(cold.at_c) - 1 / kelvin(surface_c)) /
                      (1 / kelvin(cold.at_c) - 1 / kelvin(hot.at_c));
  return std::exp(std::lerp(std::log(cold.minutes), std::log(hot.minutes), part));
}

double activation_energy_j_mol(double cold_c, double cold_min, double hot_c, double hot_min) {
  return gas_constant * std::log(cold_min / hot_min) / (1 / kelvin(cold_c) - 1 / kelvin(hot_c));
}

Result<CureResult> cure_clock(const CureClock& in) {
  JAMBLINE_TRY(checked(in));
  CureResult out;
  const double now_c = surface_now(in);
  out.computed = in.kind == CureKind::TwoPack || in.kind == CureKind::Infrared;
  out.stalled = in.minimum_c && now_c < *in.minimum_c;
  out.too_hot = now_c > in.surface_max_c;
  const double rest_min = in.rest_after_bake_min * (in.heavy_film ? in.heavy_factor : 1);
  std::optional<double> gate_until;
  if (in.bake_end_min) gate_until = *in.bake_end_min + rest_min;

  out.basis.method = out.computed
                         ? "Share of each milestone's time at the surface temperatures, Arrhenius "
                           "between the entered points and not beyond them."
                         : "This kind of product gets no heat clock: the sheet's own words hold.";
  out.basis.term("surface now", now_c, "C", measured);
  out.basis.term("most for touching the film", in.surface_max_c, "C", common_practice);
  out.basis.term("rest after bake", rest_min, "min", common_practice);
  if (in.minimum_c) out.basis.term("least curing temperature", *in.minimum_c, "C", entered);

  for (const CureStep& step : in.steps) {
    CureStanding& standing = out.standings.emplace_back();
    standing.milestone = step.milestone;
    if (!out.computed) {
      standing.word = CureWord::NotComputed;
      continue;
    }
    const auto sorted = by_temperature(step.points);
    for (const auto& reading : in.readings)
      out.outside_points = out.outside_points || reading.surface_c < sorted.front().at_c ||
                           reading.surface_c > sorted.back().at_c;
    const Progress progress = share_until(in, sorted, 0);
    standing.done_percent = 100 * progress.share;
    standing.equivalent_min = progress.share * step.points.front().minutes;
    standing.reached_min = when(in, sorted, now_c, 0);
    standing.early_min = when(in, sorted, now_c, in.reading_sd_c);
    standing.late_min = when(in, sorted, now_c, -in.reading_sd_c);
    const bool film = touches_film(step.milestone);
    if (film) standing.gate_until_min = gate_until;
    const bool gated = film && (out.too_hot || in.thumbnail == ThumbnailCheck::NotYet ||
                                (gate_until && in.now_min < *gate_until));
    const bool reached = progress.share >= 1;
    standing.word = reached ? (gated ? CureWord::Gated : CureWord::Reached)
                    : out.stalled || !standing.reached_min ? CureWord::Stalled
                                                           : CureWord::NotYet;
    const std::string name(word_of(step.milestone));
    for (const CurePoint& point : step.points)
      out.basis.term(
          name + " at " + std::to_string(static_cast<int>(std::lround(point.at_c))) + " C",
          point.minutes, "min", entered);
    if (sorted.size() > 1)
      out.basis.term(name + ", activation energy",
                     activation_energy_j_mol(sorted.front().at_c, sorted.front().minutes,
                                             sorted.back().at_c, sorted.back().minutes),
                     "J/mol", computed);
  }
  return out;
}

Result<DriveAwayResult> drive_away(const DriveAway& in) {
  if (in.rows.empty()) return fail(refusal(Code::Missing, "rows", "the adhesive maker's table"));
  for (std::size_t i = 0; i < in.rows.size(); ++i) {
    JAMBLINE_TRY(need(item("rows", i, "at_c"), in.rows[i].at_c, -40, 60, "-40 to 60 C"));
    JAMBLINE_TRY(need(item("rows", i, "humidity_percent"), in.rows[i].humidity_percent, 0, 100,
                      "0 to 100 %"));
    JAMBLINE_TRY(need(item("rows", i, "minutes"), in.rows[i].minutes, 1, 1e5, "over 0"));
  }
  if (in.coldest_c) JAMBLINE_TRY(need("coldest_c", *in.coldest_c, -40, 60, "-40 to 60 C"));
  if (in.driest_percent)
    JAMBLINE_TRY(need("driest_percent", *in.driest_percent, 0, 100, "0 to 100 %"));
  DriveAwayResult out;
  out.worst_assumed = !in.coldest_c || !in.driest_percent;
  double least_c = never, least_percent = never;
  for (const auto& row : in.rows) {
    least_c = std::min(least_c, row.at_c);
    least_percent = std::min(least_percent, row.humidity_percent);
  }
  const double coldest = in.coldest_c.value_or(least_c);
  const double driest = in.driest_percent.value_or(least_percent);
  // The nearest temperature that is not warmer, then the nearest humidity there that is not
  // moister.
  double near_c = -never;
  for (const auto& row : in.rows)
    if (row.at_c <= coldest && row.humidity_percent <= driest) near_c = std::max(near_c, row.at_c);
  double near_percent = -never;
  for (const auto& row : in.rows)
    if (row.at_c == near_c && row.humidity_percent <= driest)
      near_percent = std::max(near_percent, row.humidity_percent);
  for (const auto& row : in.rows)
    if (row.at_c == near_c && row.humidity_percent == near_percent)
      out.minutes = std::max(out.minutes.value_or(0), row.minutes);
  out.basis.method =
      "The maker's table at the coldest and driest that was logged; nothing in between.";
  out.basis.term("coldest", coldest, "C", in.coldest_c ? measured : "not known: the table's worst");
  out.basis.term("driest", driest, "%",
                 in.driest_percent ? measured : "not known: the table's worst");
  if (out.minutes)
    out.basis.term("time", *out.minutes, "min", "the adhesive maker's table, entered by the shop");
  return out;
}

}  // namespace jambline::trade
