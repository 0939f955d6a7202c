// trade/airflow.h: is the air of a booth fast enough, and when is its filter due?
//
// Velocity: mean of readings over the cross-section against the wanted value, with what the
//          instrument and the scatter leave open: over, too near to call, under. The wanted value
//          comes from the booth's maker or the authority, never from here. Expanded uncertainty:
//          k = 2 over instrument and mean (GUM, JCGM 100: 2008).
// Filter:  differential pressure over days, straight line by least squares; the day on which it
//          reaches the limit, and the early and late ends of that day (95 %, Student).
// Errors:  OutOfRange, Missing (no reading; fewer than 3 for a trend), Malformed (days not rising),
//          TooLarge (10,000 readings).
// Threads: pure.
#pragma once

#include <array>
#include <string_view>

#include "base/error.h"
#include "trade/basis.h"

namespace jambline::trade {

enum class AirflowWord : std::uint8_t { Over, TooNearToCall, Under };

struct Airflow {
  std::vector<double> velocities_m_s;
  double wanted_m_s{};
  std::string wanted_from;        // the maker, or the authority with its year
  double instrument_percent = 5;  // of reading, k = 2
  std::optional<double> area_m2;  // of the cross-section

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "velocities_m_s", .unit = "m/s", .min = 0, .max = 20}, self.velocities_m_s);
    visit(Field{.name = "wanted_m_s", .unit = "m/s", .min = 0.01, .max = 10}, self.wanted_m_s);
    visit(Field{.name = "wanted_from", .doc = "maker, or authority and year"}, self.wanted_from);
    visit(Field{.name = "instrument_percent", .unit = "%", .min = 0, .max = 50},
          self.instrument_percent);
    visit(Field{.name = "area_m2", .unit = "m2", .min = 0.1, .max = 1000}, self.area_m2);
  }
};

struct AirflowResult {
  AirflowWord word{};
  double mean_m_s{};
  double low_m_s{};  // mean less and plus the expanded uncertainty
  double high_m_s{};
  std::optional<double> flow_m3_h;
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "word"}, self.word);
    visit(Field{.name = "mean_m_s", .unit = "m/s"}, self.mean_m_s);
    visit(Field{.name = "low_m_s", .unit = "m/s"}, self.low_m_s);
    visit(Field{.name = "high_m_s", .unit = "m/s"}, self.high_m_s);
    visit(Field{.name = "flow_m3_h", .unit = "m3/h"}, self.flow_m3_h);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<AirflowResult> compare_airflow(const Airflow& airflow);

struct FilterReading {
  double day{};
  double pressure_pa{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "day", .unit = "d"}, self.day);
    visit(Field{.name = "pressure_pa", .unit = "Pa", .min = 0, .max = 5000}, self.pressure_pa);
  }
};

struct FilterTrend {
  std::vector<FilterReading> readings;  // since the last change, by day
  double limit_pa{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "readings"}, self.readings);
    visit(Field{.name = "limit_pa", .unit = "Pa", .min = 1, .max = 5000}, self.limit_pa);
  }
};

struct FilterTrendResult {
  double rise_pa_d{};
  std::optional<double> due_day;  // none: it does not rise
  std::optional<double> due_early_day;
  std::optional<double> due_late_day;  // none: the readings leave it open
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "rise_pa_d", .unit = "Pa/d"}, self.rise_pa_d);
    visit(Field{.name = "due_day", .unit = "d"}, self.due_day);
    visit(Field{.name = "due_early_day", .unit = "d"}, self.due_early_day);
    visit(Field{.name = "due_late_day", .unit = "d"}, self.due_late_day);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<FilterTrendResult> filter_due(const FilterTrend& trend);

// Air to thin one volume of liquid solvent to the wanted share of its lower explosive limit, as
// 29 CFR 1910.94(c)(6)(ii) has it for a quarter: ft3 of air a gallon, for gauging an exhaust. It is
// no statement on health.
struct Dilution {
  double vapor_ft3_gal{};
  double lel_percent{};
  double share_of_lel = 0.25;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "vapor_ft3_gal", .unit = "ft3/gal", .min = 1, .max = 200},
          self.vapor_ft3_gal);
    visit(Field{.name = "lel_percent", .unit = "%", .min = 0.1, .max = 50}, self.lel_percent);
    visit(Field{.name = "share_of_lel", .min = 0.01, .max = 1}, self.share_of_lel);
  }
};

struct DilutionResult {
  double air_ft3_gal{};
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "air_ft3_gal", .unit = "ft3/gal"}, self.air_ft3_gal);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<DilutionResult> dilution_air(const Dilution& dilution);

}  // namespace jambline::trade

template <>
inline constexpr auto jambline::enum_words<jambline::trade::AirflowWord> =
    std::to_array<std::string_view>({"over", "too near to call", "under"});
