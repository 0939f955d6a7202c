#include <cmath>

#include "app/calc/calculation.h"
#include "trade/cure_clock.h"
#include "trade/refusal.h"

namespace jambline::app {

namespace {
trade::CureClock clock_example() {
  trade::CureClock out;
  out.steps = {{trade::CureMilestone::DustFree, {{20, 20}, {60, 4}}},
               {trade::CureMilestone::SandFrom, {{20, 720}, {40, 150}, {60, 40}}},
               {trade::CureMilestone::PolishUntil, {{20, 4320}, {60, 400}}}};
  out.readings = {{0, 22}, {15, 24}, {30, 58}, {60, 60}, {75, 38}, {100, 26}};
  out.now_min = 110;
  out.minimum_c = 10;
  out.bake_end_min = 60;
  return out;
}

trade::DriveAway drive_away_example() {
  return {{{5, 30, 480}, {5, 60, 360}, {15, 30, 240}, {15, 60, 180}, {25, 30, 90}, {25, 60, 60}},
          17.5,
          42};
}

struct At {
  std::vector<trade::CurePoint> points;
  double surface_c{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "points"}, self.points);
    visit(Field{.name = "surface_c", .unit = "C", .min = -20, .max = 200}, self.surface_c);
  }
};

struct AtResult {
  std::optional<double> minutes;  // none: colder than the points
  trade::Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "minutes", .unit = "min"}, self.minutes);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<AtResult> minutes(const At& in) {
  // The clock's own look at the points.
  trade::CureClock clock;
  clock.steps = {{trade::CureMilestone::Full, in.points}};
  clock.readings = {{0, in.surface_c}};
  if (auto looked = trade::cure_clock(clock); !looked) {
    Error error = std::move(looked.error());
    for (auto& [name, value] : error.args)
      if (name == "field" && value.starts_with("steps[0].")) value.erase(0, 9);
    return fail(std::move(error));
  }
  AtResult out;
  const double found = trade::minutes_at(in.points, in.surface_c);
  if (std::isfinite(found)) out.minutes = found;
  out.basis.method =
      "ln(minutes) straight over 1/T between two points; nothing beyond them: the hottest point's "
      "time above it, none below the coldest.";
  out.basis.term("surface", in.surface_c, "C", trade::measured);
  for (const trade::CurePoint& point : in.points) {
    out.basis.term("point, temperature", point.at_c, "C", trade::entered);
    out.basis.term("point, time", point.minutes, "min", trade::entered);
  }
  return out;
}

At minutes_example() {
  return {{{20, 720}, {40, 150}, {60, 40}}, 32};
}

struct TwoPoints {
  double cold_c{};
  double cold_min{};
  double hot_c{};
  double hot_min{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "cold_c", .unit = "C", .min = -273, .max = 2000}, self.cold_c);
    visit(Field{.name = "cold_min", .unit = "min", .min = 1e-9, .max = 1e9}, self.cold_min);
    visit(Field{.name = "hot_c", .unit = "C", .min = -273, .max = 2000}, self.hot_c);
    visit(Field{.name = "hot_min", .unit = "min", .min = 1e-9, .max = 1e9}, self.hot_min);
  }
};

Result<Number> energy(const TwoPoints& in) {
  if (in.hot_c <= in.cold_c)
    return fail(trade::refusal(Code::OutOfRange, "hot_c", "not over cold_c"));
  Number out{trade::activation_energy_j_mol(in.cold_c, in.cold_min, in.hot_c, in.hot_min), {}};
  out.basis.method = "R ln(cold time / hot time) / (1/T cold - 1/T hot), temperatures in kelvin.";
  out.basis.term("cold", in.cold_c, "C", trade::entered);
  out.basis.term("time when cold", in.cold_min, "min", trade::entered);
  out.basis.term("hot", in.hot_c, "C", trade::entered);
  out.basis.term("time when hot", in.hot_min, "min", trade::entered);
  out.basis.term("gas constant", 8.314462618, "J/(mol K)", "CODATA, 2018");
  out.basis.term("activation energy", out.value, "J/mol", trade::computed);
  return out;
}

TwoPoints energy_example() {
  return {20, 720, 60, 40};
}
}  // namespace

std::vector<Calculation> cure_calculations() {
  return {
      calculation<&trade::cure_clock, &clock_example>(
          "cure-clock", "how far a film is, when it may be handled, and what still forbids it"),
      calculation<&minutes, &minutes_example>("cure-minutes",
                                              "time to a milestone at one temperature"),
      calculation<&energy, &energy_example>("activation-energy",
                                            "what two times at two temperatures say"),
      calculation<&trade::drive_away, &drive_away_example>(
          "drive-away", "minutes from setting glass until the car may be driven, by table"),
  };
}

}  // namespace jambline::app
