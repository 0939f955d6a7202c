// job/booth.h: a place where cars are sprayed, and what is done to it that may change the dirt.
//
// Source: kinds by how the air moves and events that painters log; common practice, no source.
// Words:  stand in entries for ever; new ones are added at the end only.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "base/describe.h"

namespace jambline::job {

enum class BoothKind : std::uint8_t {
  Downdraft,
  SemiDowndraft,
  SideDraft,
  CrossDraft,
  PrepDeck,
  MixingRoom
};

enum class BoothEvent : std::uint8_t {
  FiltersChanged,
  NewHose,
  NewSuits,
  AirlineFilterChanged,
  Cleaned,
};

// What is said of a booth while it is sprayed in and cleared. Only fresh air with the doors shut
// counts; what stops it starts the count from the beginning.
enum class BoothWord : std::uint8_t {
  SprayStarted,
  GunDown,
  FreshAirDoorsShut,
  FanStopped,
  Bake,
  DoorOpened,
  ClearanceOver
};

// Readings: velocity in m/s over the cross-section, filter pressure in Pa, exhaust on fresh air in
// m3/h, and the minutes until smoke was gone.
enum class BoothReading : std::uint8_t { Velocity, FilterPressure, Exhaust, SmokeTest };

// Nothing is sprayed in a mixing room; an open deck is no room whose air is mixed, and gets no time
// by formula.
constexpr bool may_be_sprayed_in(BoothKind kind) {
  return kind != BoothKind::MixingRoom;
}
constexpr bool is_open(BoothKind kind) {
  return kind == BoothKind::PrepDeck;
}

// What the shop knows of a booth. Values come from its maker or an authority, never from here.
struct BoothFacts {
  std::optional<double> volume_m3 = {};
  std::optional<double> wanted_m_s = {};
  std::string wanted_from;
  std::optional<double> rated_exhaust_m3_h = {};
  std::optional<double> most_pressure_pa = {};
  double mixing_factor = 3;
  std::optional<double> fixed_clear_min = {};
  double extra_factor = 1;
  std::string extra_factor_name;
  int smoke_valid_days = 424;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "volume_m3", .unit = "m3", .min = 1, .max = 100000}, self.volume_m3);
    visit(Field{.name = "wanted_m_s",
                .unit = "m/s",
                .doc = "required velocity",
                .min = 0.01,
                .max = 10},
          self.wanted_m_s);
    visit(Field{.name = "wanted_from", .doc = "the booth's maker, or the authority with its year"},
          self.wanted_from);
    visit(Field{.name = "rated_exhaust_m3_h",
                .unit = "m3/h",
                .doc = "on fresh air, by the maker",
                .min = 1,
                .max = 1e7},
          self.rated_exhaust_m3_h);
    visit(Field{.name = "most_pressure_pa",
                .unit = "Pa",
                .doc = "over the filter, when it is due",
                .min = 1,
                .max = 5000},
          self.most_pressure_pa);
    visit(
        Field{.name = "mixing_factor", .doc = "1: mixed at once, everywhere", .min = 1, .max = 10},
        self.mixing_factor);
    visit(Field{.name = "fixed_clear_min",
                .unit = "min",
                .doc = "the shop's own time",
                .min = 1,
                .max = 1440},
          self.fixed_clear_min);
    visit(Field{.name = "extra_factor",
                .doc = "the shop's own, on top of whichever rule",
                .min = 1,
                .max = 10},
          self.extra_factor);
    visit(Field{.name = "extra_factor_name", .doc = "what the shop calls it"},
          self.extra_factor_name);
    visit(Field{.name = "smoke_valid_days",
                .unit = "d",
                .doc = "14 months at their shortest",
                .min = 1,
                .max = 36500},
          self.smoke_valid_days);
  }
  friend bool operator==(const BoothFacts&, const BoothFacts&) = default;
};

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::BoothKind> =
    std::to_array<std::string_view>({"downdraft", "semi-downdraft", "side draft", "cross draft",
                                     "prep deck", "mixing room"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::BoothEvent> =
    std::to_array<std::string_view>({"filters changed", "new hose", "new suits",
                                     "airline filter changed", "cleaned"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::BoothWord> =
    std::to_array<std::string_view>({"spray started", "gun down", "fresh air, doors shut",
                                     "fan stopped", "bake", "door opened", "clearance over"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::BoothReading> =
    std::to_array<std::string_view>({"velocity", "filter pressure", "exhaust", "smoke test"});
