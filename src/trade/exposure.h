// trade/exposure.h: what was breathed against the limits that the shop chose to use.
//
// Averages:8 hours: sum of concentration x time over 8, never over the hours worked; 15 minutes:
//          the worst window that the samples show; a ceiling is compared with the highest sample.
//          What was not sampled counts as nothing: the hours that were are in the basis.
// Mixture: sum of each 8-hour average over its limit, for each authority on its own, and the
//          largest of them.
// Source:  29 CFR 1910.1000(d)(1)(i) and (d)(2)(i); its year 1971 from memory. ppm to mg/m3 by the
//          molar volume at the real temperature and pressure (24.45 L/mol at 25 C, 101.325 kPa).
// Promise: a word "below" or "over" a named limit of a named authority and year; never "safe". A
//          passed average is no pass of a ceiling.
// Errors:  OutOfRange, Missing (no sample, no limit), Malformed (samples that overlap, a limit
//          twice, two units for one substance), TooLarge (1,000 samples, 200 limits).
#pragma once

#include <array>
#include <string_view>

#include "base/error.h"
#include "trade/basis.h"

namespace jambline::trade {

double molar_volume_l(double air_c, double pressure_kpa);
double mg_m3_of_ppm(double ppm, double molar_mass_g, double molar_volume_l);

enum class LimitKind : std::uint8_t { EightHours, FifteenMinutes, Ceiling };

struct ExposureSample {
  std::string substance;
  double value{};  // in the unit of its limits
  double from_h{};
  double to_h{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "substance"}, self.substance);
    visit(
        Field{
            .name = "value", .doc = "in the unit of the substance's limits", .min = 0, .max = 1e9},
        self.value);
    visit(Field{.name = "from_h", .unit = "h", .min = 0, .max = 24}, self.from_h);
    visit(Field{.name = "to_h", .unit = "h", .min = 0, .max = 24}, self.to_h);
  }
};

struct ExposureLimit {
  std::string substance;
  LimitKind kind{};
  double value{};
  std::string unit;
  std::string authority;
  int year{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "substance"}, self.substance);
    visit(Field{.name = "kind"}, self.kind);
    visit(Field{.name = "value", .min = 1e-12, .max = 1e9}, self.value);
    visit(Field{.name = "unit", .doc = "ppm or mg/m3"}, self.unit);
    visit(Field{.name = "authority"}, self.authority);
    visit(Field{.name = "year", .min = 1900, .max = 2200}, self.year);
  }
};

struct Exposure {
  std::vector<ExposureSample> samples;
  std::vector<ExposureLimit> limits;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "samples"}, self.samples);
    visit(Field{.name = "limits"}, self.limits);
  }
};

struct ExposureAgainst {
  std::string substance;
  LimitKind kind{};
  double value{};
  double limit{};
  std::string unit;
  std::string authority;
  int year{};
  bool over = false;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "substance"}, self.substance);
    visit(Field{.name = "kind"}, self.kind);
    visit(Field{.name = "value"}, self.value);
    visit(Field{.name = "limit"}, self.limit);
    visit(Field{.name = "unit"}, self.unit);
    visit(Field{.name = "authority"}, self.authority);
    visit(Field{.name = "year"}, self.year);
    visit(Field{.name = "over"}, self.over);
  }
};

struct ExposureResult {
  std::vector<ExposureAgainst> against;  // one a limit, in the order of the limits
  std::optional<double> mixture;  // two or more 8-hour limits of one authority; over 1 is over
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "against"}, self.against);
    visit(Field{.name = "mixture"}, self.mixture);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<ExposureResult> compare_exposure(const Exposure& exposure);

}  // namespace jambline::trade

template <>
inline constexpr auto jambline::enum_words<jambline::trade::LimitKind> =
    std::to_array<std::string_view>({"eight hours", "fifteen minutes", "ceiling"});
