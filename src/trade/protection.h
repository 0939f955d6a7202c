// trade/protection.h: what a respirator may be used up to, and when its checks are due.
//
// Use:     maximum use concentration = assigned protection factor x limit, never over what is
//          immediately dangerous nor over the cartridge's own most; the US and the UK scheme of
//          factors are not mixed (29 CFR 1910.134(b), (d)(3)(i)).
// Fit:     overall fit factor = N / sum(1/ff): the harmonic mean of the exercises without the
//          grimace; at least 100 for half, 500 for full facepieces (1910.134 app. A part I.C;
//          (f)(7)). The years of these rules are from memory.
// Change:  a cartridge schedule is the shop's, entered with what it rests on; nothing is made up
//          here.
// Errors:  OutOfRange, Missing. Threads: pure.
#pragma once

#include <array>
#include <string_view>

#include "base/error.h"
#include "trade/basis.h"

namespace jambline::trade {

enum class FactorScheme : std::uint8_t { Us, Uk };
enum class Facepiece : std::uint8_t { Half, Full };

struct MaximumUse {
  double assigned_factor{};
  FactorScheme factor_scheme{};
  double limit{};
  std::string unit;
  std::string authority;
  int year{};
  FactorScheme limit_scheme{};
  std::optional<double> dangerous;    // immediately dangerous to life or health
  std::optional<double> device_most;  // of the cartridge or device

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "assigned_factor", .min = 1, .max = 10000}, self.assigned_factor);
    visit(Field{.name = "factor_scheme"}, self.factor_scheme);
    visit(Field{.name = "limit", .min = 1e-12, .max = 1e9}, self.limit);
    visit(Field{.name = "unit"}, self.unit);
    visit(Field{.name = "authority"}, self.authority);
    visit(Field{.name = "year", .min = 1900, .max = 2200}, self.year);
    visit(Field{.name = "limit_scheme"}, self.limit_scheme);
    visit(Field{.name = "dangerous", .min = 1e-12, .max = 1e9}, self.dangerous);
    visit(Field{.name = "device_most", .min = 1e-12, .max = 1e9}, self.device_most);
  }
};

struct MaximumUseResult {
  double most{};
  std::string bound_by;  // "factor x limit", "immediately dangerous", "device"
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "most"}, self.most);
    visit(Field{.name = "bound_by"}, self.bound_by);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<MaximumUseResult> maximum_use(const MaximumUse& use);

struct FitTest {
  std::vector<double> exercise_factors;  // without the grimace
  Facepiece facepiece{};
  double age_days{};
  double valid_days = 365;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "exercise_factors", .doc = "without the grimace", .min = 1, .max = 1e7},
          self.exercise_factors);
    visit(Field{.name = "facepiece"}, self.facepiece);
    visit(Field{.name = "age_days", .unit = "d", .min = 0, .max = 36500}, self.age_days);
    visit(Field{.name = "valid_days", .unit = "d", .min = 1, .max = 36500}, self.valid_days);
  }
};

struct FitTestResult {
  double overall_factor{};
  double pass_mark{};
  bool passes = false;
  bool in_date = false;
  double due_in_days{};  // negative: overdue
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "overall_factor"}, self.overall_factor);
    visit(Field{.name = "pass_mark"}, self.pass_mark);
    visit(Field{.name = "passes"}, self.passes);
    visit(Field{.name = "in_date"}, self.in_date);
    visit(Field{.name = "due_in_days", .unit = "d"}, self.due_in_days);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<FitTestResult> fit_test(const FitTest& test);

struct Cartridge {
  double schedule_h{};
  std::string schedule_basis;  // the data that it rests on
  std::vector<double> used_h;  // one a use

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "schedule_h", .unit = "h", .min = 0.1, .max = 10000}, self.schedule_h);
    visit(Field{.name = "schedule_basis", .doc = "what the schedule rests on"},
          self.schedule_basis);
    visit(Field{.name = "used_h", .unit = "h", .min = 0, .max = 24}, self.used_h);
  }
};

struct CartridgeResult {
  double left_h{};  // negative: over
  bool change = false;
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "left_h", .unit = "h"}, self.left_h);
    visit(Field{.name = "change"}, self.change);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<CartridgeResult> cartridge_left(const Cartridge& cartridge);

}  // namespace jambline::trade

template <>
inline constexpr auto jambline::enum_words<jambline::trade::FactorScheme> =
    std::to_array<std::string_view>({"us", "uk"});
template <>
inline constexpr auto jambline::enum_words<jambline::trade::Facepiece> =
    std::to_array<std::string_view>({"half", "full"});
