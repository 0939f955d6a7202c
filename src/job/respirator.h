// job/respirator.h: what a person breathes through, and what is kept about it.
//
// Factor:  the assigned protection factor belongs to a scheme, an authority and a year; US and UK
//          factors are never mixed. It holds within a working respirator program only.
// Fit:     what fits tightly is fit tested, also on an airline; a loose hood is not.
// Source:  29 CFR 1910.134 table 1 and its footnotes, 2006 (US). For the UK the shop enters its
// own. Words:   stand in entries for ever; new ones are added at the end only.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/describe.h"
#include "trade/protection.h"

namespace jambline::job {

enum class RespiratorKind : std::uint8_t {
  HalfAirPurifying,
  FullAirPurifying,
  PoweredTight,
  PoweredLoose,
  SuppliedHalf,
  SuppliedFull,
  SuppliedHood
};
enum class FitMethod : std::uint8_t { Quantitative, Qualitative };
// What falls due for a person besides the fit test. No medical detail, only the day.
enum class DueKind : std::uint8_t { HealthSurveillance, PainterTraining, RespiratorTraining };

constexpr bool supplies_air(RespiratorKind kind) {
  return kind == RespiratorKind::SuppliedHalf || kind == RespiratorKind::SuppliedFull ||
         kind == RespiratorKind::SuppliedHood;
}
constexpr bool fits_tightly(RespiratorKind kind) {
  return kind != RespiratorKind::PoweredLoose && kind != RespiratorKind::SuppliedHood;
}
constexpr bool has_cartridge(RespiratorKind kind) {
  return !supplies_air(kind);
}
constexpr trade::Facepiece facepiece_of(RespiratorKind kind) {
  return kind == RespiratorKind::HalfAirPurifying || kind == RespiratorKind::SuppliedHalf
             ? trade::Facepiece::Half
             : trade::Facepiece::Full;
}
// The US table's factor: of continuous flow for what is on an airline; a hood or a powered one with
// the 25 that holds without the maker's own evidence.
constexpr double usual_us_factor(RespiratorKind kind) {
  switch (kind) {
    case RespiratorKind::HalfAirPurifying:
      return 10;
    case RespiratorKind::FullAirPurifying:
    case RespiratorKind::PoweredTight:
    case RespiratorKind::SuppliedHalf:
      return 50;
    case RespiratorKind::SuppliedFull:
      return 1000;
    case RespiratorKind::PoweredLoose:
    case RespiratorKind::SuppliedHood:
      return 25;
  }
  return 10;
}

struct Respirator {
  std::string model;
  RespiratorKind kind{};
  trade::FactorScheme scheme{};
  double assigned_factor{};
  std::string authority;
  int year{};
  std::string allowed_for_activated;
  bool retired{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "model", .doc = "as it is written on it"}, self.model);
    visit(Field{.name = "kind"}, self.kind);
    visit(Field{.name = "scheme"}, self.scheme);
    visit(Field{.name = "assigned_factor", .min = 1, .max = 10000}, self.assigned_factor);
    visit(Field{.name = "authority", .doc = "who assigns the factor"}, self.authority);
    visit(Field{.name = "year", .min = 1900, .max = 2200}, self.year);
    visit(Field{.name = "allowed_for_activated",
                .doc = "where the shop's written program allows it for activated product although "
                       "it supplies no air: what that rests on"},
          self.allowed_for_activated);
    visit(Field{.name = "retired"}, self.retired);
  }
  friend bool operator==(const Respirator&, const Respirator&) = default;
};

// Of one person in one model and size.
struct FitTest {
  std::string size;
  FitMethod method{};
  std::vector<double> exercise_factors;
  bool passed{};
  int tested_day{};
  int valid_days = 365;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "size"}, self.size);
    visit(Field{.name = "method"}, self.method);
    visit(Field{.name = "exercise_factors",
                .doc = "of a quantitative test, without the grimace",
                .min = 1,
                .max = 1e7},
          self.exercise_factors);
    visit(Field{.name = "passed", .doc = "of a qualitative test"}, self.passed);
    visit(
        Field{.name = "tested_day", .unit = "d", .doc = "days since 1970", .min = 0, .max = 100000},
        self.tested_day);
    visit(Field{.name = "valid_days", .unit = "d", .min = 1, .max = 36500}, self.valid_days);
  }
  friend bool operator==(const FitTest&, const FitTest&) = default;
};

// Of the compressor that feeds the airlines.
struct BreathingAir {
  bool grade_d{};
  bool co_alarm_works{};
  bool low_flow_alarm_works{};
  int checked_day{};
  int valid_days{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "grade_d", .doc = "the record says that it was met"}, self.grade_d);
    visit(Field{.name = "co_alarm_works"}, self.co_alarm_works);
    visit(Field{.name = "low_flow_alarm_works"}, self.low_flow_alarm_works);
    visit(
        Field{
            .name = "checked_day", .unit = "d", .doc = "days since 1970", .min = 0, .max = 100000},
        self.checked_day);
    visit(Field{.name = "valid_days", .unit = "d", .min = 1, .max = 36500}, self.valid_days);
  }
  friend bool operator==(const BreathingAir&, const BreathingAir&) = default;
};

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::RespiratorKind> =
    std::to_array<std::string_view>({"half mask, air-purifying", "full face, air-purifying",
                                     "powered, tight-fitting", "powered, loose-fitting",
                                     "airline half mask", "airline full face",
                                     "supplied-air hood"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::FitMethod> =
    std::to_array<std::string_view>({"quantitative", "qualitative"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::DueKind> =
    std::to_array<std::string_view>({"health surveillance", "painter training",
                                     "respirator training"});
