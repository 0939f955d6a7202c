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
  if (step.points.size() > 50) return fail(refusal(Code::TooLarge, list, "50 at most"));
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
  if (in.steps.size() > 50) return fail(refusal(Code::TooLarge, "steps", "50 at most"));
  if (in.readings.size() > 10000)
    return fail(refusal(Code::TooLarge, "readings", "10,000 at most"));
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
  if (in.minimum_c) JAMBLINE_TRY(need("minimum_c", *in.minimum_c, -20, 60, "-20 to 60 C"));
  if (in.bake_end_min)
    JAMBLINE_TRY(need("bake_end_min", *in.bake_end_min, 0, 1e6, "not before the last coat"));
  JAMBLINE_TRY(need("heavy_factor", in.heavy_factor, 1, 10, "1 to 10"));
  JAMBLINE_TRY(need("learned_factor", in.learned_factor, 1, 10, "1 to 10"));
  JAMBLINE_TRY(need("surface_max_c", in.surface_max_c, 10, 60, "10 to 60 C"));
  return need("rest_after_bake_min", in.rest_after_bake_min, 0, 10000, "0 to 10,000 min");
}

// What runs out must not be thought to last longer; all else not to be ready earlier.
bool runs_out(CureMilestone milestone) {
  return milestone == CureMilestone::PolishUntil || milestone == CureMilestone::PotLife;
}

struct Curve {
  std::vector<CurePoint> points;  // by temperature
  bool runs_out = false;

  bool counts_at(double surface_c) const { return runs_out || surface_c >= points.front().at_c; }
  double share_per_min(double surface_c) const {
    if (!counts_at(surface_c)) return 0;
    return 1 / minutes_at(points, std::max(surface_c, points.front().at_c));
  }
  bool outside(double surface_c) const {
    return surface_c < points.front().at_c || surface_c > points.back().at_c;
  }
};

// The share done over a straight piece of temperature, cut where the rate has corners.
double share_over(const Curve& curve, double span_min, double from_c, double to_c) {
  if (span_min <= 0) return 0;
  if (from_c == to_c) return span_min * curve.share_per_min(from_c);
  std::vector<double> cuts{0, 1};
  for (const CurePoint& point : curve.points) {
    const double at = (point.at_c - from_c) / (to_c - from_c);
    if (at > 0 && at < 1) cuts.push_back(at);
  }
  std::sort(cuts.begin(), cuts.end());
  double sum = 0;
  for (std::size_t i = 1; i < cuts.size(); ++i) {
    // Inside the piece, so that a corner belongs to the right side of it.
    const double inside = std::midpoint(cuts[i - 1], cuts[i]);
    if (!curve.counts_at(std::lerp(from_c, to_c, inside))) continue;
    const auto rate = [&](double at) {
      return curve.share_per_min(std::max(std::lerp(from_c, to_c, at), curve.points.front().at_c));
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

Progress share_until(const CureClock& in, const Curve& curve, double warmer_c) {
  Progress out;
  const auto piece = [&](double from_min, double to_min, double from_c, double to_c) {
    const double more = share_over(curve, to_min - from_min, from_c, to_c);
    if (out.share < 1 && out.share + more >= 1) {
      double low = from_min, high = to_min;  // the time of the crossing, by halving
      for (int i = 0; i < 60; ++i) {
        const double half = std::midpoint(low, high);
        const double half_c = std::lerp(from_c, to_c, (half - from_min) / (to_min - from_min));
        if (out.share + share_over(curve, half - from_min, from_c, half_c) >= 1)
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

std::optional<double> when(const CureClock& in, const Curve& curve, double now_c, double warmer_c) {
  const Progress progress = share_until(in, curve, warmer_c);
  if (progress.reached_min) return progress.reached_min;
  const double rate = curve.share_per_min(now_c + warmer_c);
  if (rate <= 0) return std::nullopt;
  return in.now_min + (1 - progress.share) / rate;
}

// What touches the film, as long as the sheet says times what was learned.
std::vector<CurePoint> learned_points(const CureStep& step, double learned_factor) {
  auto out = by_temperature(step.points);
  if (touches_film(step.milestone))
    for (auto& point : out) point.minutes *= learned_factor;
  return out;
}
}  // namespace

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
  const CureClock usually;
  const auto [coldest, hottest] =
      std::minmax_element(in.readings.begin(), in.readings.end(),
                          [](const auto& a, const auto& b) { return a.surface_c < b.surface_c; });
  out.basis.term("now", in.now_min, "min", measured);
  out.basis.term("readings", static_cast<double>(in.readings.size()), "", measured);
  out.basis.term("coldest reading", coldest->surface_c, "C", measured);
  out.basis.term("hottest reading", hottest->surface_c, "C", measured);
  out.basis.term("surface now", now_c, "C", measured);
  out.basis.term("spread of a reading (1 sd)", in.reading_sd_c, "C",
                 usual(in.reading_sd_c, usually.reading_sd_c));
  out.basis.term("most for touching the film", in.surface_max_c, "C",
                 usual(in.surface_max_c, usually.surface_max_c));
  out.basis.term("rest after bake", in.rest_after_bake_min, "min",
                 usual(in.rest_after_bake_min, usually.rest_after_bake_min));
  if (in.heavy_film) {
    out.basis.term("longer for a run or heavy film", in.heavy_factor, "x",
                   usual(in.heavy_factor, usually.heavy_factor));
    out.basis.term("its rest", rest_min, "min", computed);
  }
  if (in.learned_factor != 1)
    out.basis.term("longer, learned from thumbnail checks", in.learned_factor, "x", measured);
  if (in.bake_end_min) out.basis.term("bake ended", *in.bake_end_min, "min", measured);
  if (in.minimum_c) out.basis.term("least curing temperature", *in.minimum_c, "C", entered);

  for (const CureStep& step : in.steps) {
    CureStanding& standing = out.standings.emplace_back();
    standing.milestone = step.milestone;
    if (!out.computed) {
      standing.word = CureWord::NotComputed;
      continue;
    }
    const Curve curve{learned_points(step, in.learned_factor), runs_out(step.milestone)};
    const auto& sorted = curve.points;
    bool too_hot_to_say = false;
    for (const auto& reading : in.readings) {
      out.outside_points = out.outside_points || curve.outside(reading.surface_c);
      too_hot_to_say = too_hot_to_say || (curve.runs_out && reading.surface_c > sorted.back().at_c);
    }
    const Progress progress = share_until(in, curve, 0);
    standing.done_percent = 100 * progress.share;
    standing.equivalent_min = progress.share * minutes_at(curve.points, step.points.front().at_c);
    const bool reached = progress.share >= 1;
    if (reached || !too_hot_to_say) {
      standing.reached_min = when(in, curve, now_c, 0);
      standing.early_min = when(in, curve, now_c, in.reading_sd_c);
      standing.late_min = when(in, curve, now_c, -in.reading_sd_c);
    }
    const bool film = touches_film(step.milestone);
    if (film) standing.gate_until_min = gate_until;
    if (film && in.heavy_film && !in.bake_end_min && standing.reached_min)
      standing.gate_until_min = *standing.reached_min + rest_min;
    const bool gated = film && (out.too_hot || in.thumbnail == ThumbnailCheck::NotYet ||
                                (standing.gate_until_min && in.now_min < *standing.gate_until_min));
    standing.word = reached          ? (gated ? CureWord::Gated : CureWord::Reached)
                    : too_hot_to_say ? CureWord::NotComputed
                    : (out.stalled && !curve.runs_out) || !standing.reached_min ? CureWord::Stalled
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
  if (out.outside_points)
    out.basis.method +=
        " A reading lies outside a milestone's points: nothing is extrapolated, the stricter way "
        "holds.";
  return out;
}

}  // namespace jambline::trade
