// trade/clearance.h: how long a booth's air is left to clear, and how much of that has gone by.
//
// Which:   1 an in-date measured smoke test governs; 2 none: the purge formula with its mixing
//          factor, marked as the weaker basis; 3 overdue: the longer of the old test and the
//          formula. An open deck or floor is no mixed box: no formula, only a measured time or the
//          shop's fixed one (30 min is the usual guidance, HSE). A percentage is only said of the
//          formula.
// Count:   only on fresh air with the fan running and doors shut; fan stopped, bake (which
//          recirculates) and an opened door start it from the beginning.
// Source:  t = -ln(C2/C1) V/Q, CDC 2003 appendix B table B.1; the mixing factor multiplies.
// Promise: a number of minutes; never a word that a place is without danger.
// Errors:  OutOfRange, Missing (nothing to go by), Malformed (changes of the exhaust that are not
//          rising in time), TooLarge (10,000 changes). Threads: pure.
#pragma once

#include <array>
#include <string_view>

#include "base/error.h"
#include "trade/basis.h"

namespace jambline::trade {

enum class SprayPlace : std::uint8_t { Booth, OpenDeck };
enum class ClearanceRule : std::uint8_t { SmokeTest, Formula, LongerOfBoth, FixedTime };

// Minutes to remove so much in a room that is mixed all the time.
double purge_min(double air_changes_1_h, double removed_percent);

struct SmokeTest {
  double clear_min{};
  double age_days{};
  double valid_days = 424;  // 14 months at their shortest

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "clear_min", .unit = "min", .min = 0.1, .max = 600}, self.clear_min);
    visit(Field{.name = "age_days", .unit = "d", .min = 0, .max = 36500}, self.age_days);
    visit(Field{.name = "valid_days", .unit = "d", .min = 1, .max = 36500}, self.valid_days);
  }
};

struct Clearance {
  SprayPlace place{};
  std::optional<SmokeTest> smoke_test;
  std::optional<double> volume_m3;
  std::optional<double> exhaust_m3_h;
  bool exhaust_measured = false;  // else rated
  double mixing_factor = 3;       // 1: mixed at once, everywhere
  double removed_percent = 99.9;
  std::optional<double> fixed_min;  // the shop's own
  double extra_factor = 1;          // a named setting of the shop, on top of whichever rule

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "place"}, self.place);
    visit(Field{.name = "smoke_test"}, self.smoke_test);
    visit(Field{.name = "volume_m3", .unit = "m3", .min = 1, .max = 100000}, self.volume_m3);
    visit(
        Field{.name = "exhaust_m3_h", .unit = "m3/h", .doc = "on fresh air", .min = 1, .max = 1e7},
        self.exhaust_m3_h);
    visit(Field{.name = "exhaust_measured"}, self.exhaust_measured);
    visit(Field{.name = "mixing_factor", .min = 1, .max = 10}, self.mixing_factor);
    visit(Field{.name = "removed_percent", .unit = "%", .min = 50, .max = 99.9999},
          self.removed_percent);
    visit(Field{.name = "fixed_min", .unit = "min", .min = 1, .max = 1440}, self.fixed_min);
    visit(Field{.name = "extra_factor", .min = 1, .max = 10}, self.extra_factor);
  }
};

struct ClearanceResult {
  double minutes{};
  ClearanceRule rule{};
  bool weaker = false;  // not a measured test in date
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "minutes", .unit = "min"}, self.minutes);
    visit(Field{.name = "rule"}, self.rule);
    visit(Field{.name = "weaker"}, self.weaker);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<ClearanceResult> clearance_time(const Clearance& clearance);

// The exhaust as it was run, for the count.
enum class ExhaustEvent : std::uint8_t { FreshAirDoorsShut, FanStopped, Bake, DoorOpened };

struct ExhaustChange {
  ExhaustEvent event{};
  double at_s{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "event"}, self.event);
    visit(Field{.name = "at_s", .unit = "s"}, self.at_s);
  }
};

struct ClearanceCount {
  double gun_down_s{};
  double needed_min{};
  double now_s{};
  std::vector<ExhaustChange> changes;  // rising in time, no two at once

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "gun_down_s", .unit = "s"}, self.gun_down_s);
    visit(Field{.name = "needed_min", .unit = "min", .min = 0.1, .max = 100000}, self.needed_min);
    visit(Field{.name = "now_s", .unit = "s"}, self.now_s);
    visit(Field{.name = "changes"}, self.changes);
  }
};

struct ClearanceCountResult {
  bool counting = false;  // on fresh air, doors shut, not yet over
  bool over = false;      // the whole time has gone by in one piece
  double left_s{};
  int restarts = 0;
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "counting"}, self.counting);
    visit(Field{.name = "over"}, self.over);
    visit(Field{.name = "left_s", .unit = "s"}, self.left_s);
    visit(Field{.name = "restarts"}, self.restarts);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<ClearanceCountResult> clearance_count(const ClearanceCount& count);

}  // namespace jambline::trade

template <>
inline constexpr auto jambline::enum_words<jambline::trade::SprayPlace> =
    std::to_array<std::string_view>({"booth", "open deck"});
template <>
inline constexpr auto jambline::enum_words<jambline::trade::ClearanceRule> =
    std::to_array<std::string_view>({"smoke test", "formula", "longer of both", "fixed time"});
template <>
inline constexpr auto jambline::enum_words<jambline::trade::ExhaustEvent> =
    std::to_array<std::string_view>({"fresh air, doors shut", "fan stopped", "bake",
                                     "door opened"});
