// trade/cure_clock.h: how far a film is, and when it may be handled, sanded, polished, assembled.
//
// In:      what the product's sheet says, entered by the shop: minutes at a temperature, one or
//          more points a milestone; the panel group's logged surface temperatures (straight between
//          readings, the last one holds on); never the air's.
// Rate:    between two points of a milestone ln(time) is a straight line over 1/T (Arrhenius).
//          Outside the points nothing is extrapolated: over the hottest its time holds, under the
//          coldest nothing is counted (both the stricter way, and said so in the basis). For what
//          runs out (polish until, pot life) the stricter way is the other
//          one: under the coldest its time holds; over the hottest nothing can be said, so the word
//          is "not computed" unless the hottest point's time has already gone by.
// None:    UV-cured and moisture-cure products get no such clock: `computed` is false, the sheet's
//          own words hold.
// Gates:   beside the clock, for what touches the film: surface not hotter than `surface_max_c`,
//          rest after the bake, a longer rest for runs and heavy film (without a bake it begins
//          when the milestone is reached), the thumbnail check. The defaults are common practice,
//          no source; the sheet wins.
// Learned: what touches the film is taken `learned_factor` times as long as the sheet says, where a
//          shop found its film still soft at the sheet's time; never shorter.
// Errors:  OutOfRange, Missing, Malformed (times not rising), TooLarge (50 steps, 50 points a step,
//          10,000 readings). Threads: pure.
#pragma once

#include <array>
#include <string_view>

#include "base/error.h"
#include "trade/basis.h"

namespace jambline::trade {

enum class CureKind : std::uint8_t { TwoPack, Infrared, Uv, MoistureCure };
enum class CureMilestone : std::uint8_t {
  DustFree,
  PullTape,
  Handle,
  SandFrom,
  PolishFrom,
  PolishUntil,
  Assemble,
  LastPolish,
  Full,
  PotLife,
  HandlingStrength,
  FullStrength,
};
enum class ThumbnailCheck : std::uint8_t { NotAsked, Firm, NotYet };
enum class CureWord : std::uint8_t { Reached, NotYet, Gated, Stalled, NotComputed };

struct CurePoint {
  double at_c{};
  double minutes{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "at_c", .unit = "C", .min = -20, .max = 200}, self.at_c);
    visit(Field{.name = "minutes", .unit = "min", .min = 0.1, .max = 1e6}, self.minutes);
  }
  friend bool operator==(const CurePoint&, const CurePoint&) = default;
};

struct CureStep {
  CureMilestone milestone{};
  std::vector<CurePoint> points;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "milestone"}, self.milestone);
    visit(Field{.name = "points"}, self.points);
  }
  friend bool operator==(const CureStep&, const CureStep&) = default;
};

struct SurfaceReading {
  double at_min{};
  double surface_c{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "at_min", .unit = "min", .doc = "since the last coat"}, self.at_min);
    visit(Field{.name = "surface_c", .unit = "C", .min = -20, .max = 200}, self.surface_c);
  }
};

struct CureClock {
  CureKind kind{};
  std::vector<CureStep> steps;
  std::vector<SurfaceReading> readings;  // of one panel group, rising in time, the first at 0
  double now_min{};
  double reading_sd_c = 2;          // of a surface reading
  std::optional<double> minimum_c;  // the product's least curing temperature
  double surface_max_c = 30;        // for what touches the film
  std::optional<double> bake_end_min;
  double rest_after_bake_min = 60;
  bool heavy_film = false;  // a run, or a heavy build
  double heavy_factor = 3;  // on the rest
  ThumbnailCheck thumbnail{};
  double learned_factor = 1;  // on the time until the film is touched

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "kind"}, self.kind);
    visit(Field{.name = "steps"}, self.steps);
    visit(Field{.name = "readings"}, self.readings);
    visit(Field{.name = "now_min", .unit = "min", .min = 0, .max = 1e6}, self.now_min);
    visit(Field{.name = "reading_sd_c", .unit = "C", .min = 0, .max = 30}, self.reading_sd_c);
    visit(Field{.name = "minimum_c", .unit = "C", .min = -20, .max = 60}, self.minimum_c);
    visit(Field{.name = "surface_max_c", .unit = "C", .min = 10, .max = 60}, self.surface_max_c);
    visit(Field{.name = "bake_end_min", .unit = "min", .min = 0, .max = 1e6}, self.bake_end_min);
    visit(Field{.name = "rest_after_bake_min", .unit = "min", .min = 0, .max = 10000},
          self.rest_after_bake_min);
    visit(Field{.name = "heavy_film"}, self.heavy_film);
    visit(Field{.name = "heavy_factor", .min = 1, .max = 10}, self.heavy_factor);
    visit(Field{.name = "thumbnail"}, self.thumbnail);
    visit(Field{.name = "learned_factor",
                .doc = "on the sheet's time until the film is touched",
                .min = 1,
                .max = 10},
          self.learned_factor);
  }
};

struct CureStanding {
  CureMilestone milestone{};
  CureWord word{};
  double done_percent{};                 // of the milestone's time; may pass 100
  double equivalent_min{};               // at the first point's temperature
  std::optional<double> reached_min;     // when it was or will be at the present temperature
  std::optional<double> early_min;       // one sd warmer
  std::optional<double> late_min;        // one sd colder
  std::optional<double> gate_until_min;  // when the rest is over

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "milestone"}, self.milestone);
    visit(Field{.name = "word"}, self.word);
    visit(Field{.name = "done_percent", .unit = "%"}, self.done_percent);
    visit(Field{.name = "equivalent_min", .unit = "min"}, self.equivalent_min);
    visit(Field{.name = "reached_min", .unit = "min"}, self.reached_min);
    visit(Field{.name = "early_min", .unit = "min"}, self.early_min);
    visit(Field{.name = "late_min", .unit = "min"}, self.late_min);
    visit(Field{.name = "gate_until_min", .unit = "min"}, self.gate_until_min);
  }
};

struct CureResult {
  bool computed = false;
  bool stalled = false;  // colder now than the product cures
  bool too_hot = false;  // to touch the film
  bool outside_points = false;
  std::vector<CureStanding> standings;  // one a step
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "computed"}, self.computed);
    visit(Field{.name = "stalled"}, self.stalled);
    visit(Field{.name = "too_hot"}, self.too_hot);
    visit(Field{.name = "outside_points"}, self.outside_points);
    visit(Field{.name = "standings"}, self.standings);
    visit(Field{.name = "basis"}, self.basis);
  }
};

// Minutes to the milestone at one temperature, by the rules above; infinity where nothing counts.
double minutes_at(const std::vector<CurePoint>& points, double surface_c);
bool touches_film(CureMilestone milestone);  // sand from, polish from, last polish
// J/mol between two points; the two-temperature form with R = 8.314462618 J/(mol K).
double activation_energy_j_mol(double cold_c, double cold_min, double hot_c, double hot_min);
Result<CureResult> cure_clock(const CureClock& clock);

// 2) Glass: minutes from setting until the car may be driven, from the adhesive maker's table.

struct DriveAwayRow {
  double at_c{};
  double humidity_percent{};
  double minutes{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "at_c", .unit = "C", .min = -40, .max = 60}, self.at_c);
    visit(Field{.name = "humidity_percent", .unit = "%", .min = 0, .max = 100},
          self.humidity_percent);
    visit(Field{.name = "minutes", .unit = "min", .min = 1, .max = 1e5}, self.minutes);
  }
  friend bool operator==(const DriveAwayRow&, const DriveAwayRow&) = default;
};

struct DriveAway {
  std::vector<DriveAwayRow> rows;   // of this car's airbag and belt case
  std::optional<double> coldest_c;  // logged since the glass was set
  std::optional<double> driest_percent;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "rows", .doc = "the maker's table for this case"}, self.rows);
    visit(Field{.name = "coldest_c", .unit = "C", .min = -40, .max = 60}, self.coldest_c);
    visit(Field{.name = "driest_percent", .unit = "%", .min = 0, .max = 100}, self.driest_percent);
  }
};

struct DriveAwayResult {
  std::optional<double>
      minutes;                 // none: colder or drier than the table: do not drive, ask the maker
  bool worst_assumed = false;  // a value was not known
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "minutes", .unit = "min"}, self.minutes);
    visit(Field{.name = "worst_assumed"}, self.worst_assumed);
    visit(Field{.name = "basis"}, self.basis);
  }
};

// The slowest of the rows that are not warmer and not moister than what was logged, as near to it
// as the table has them; nothing between rows. What is not known may be anything that the table
// has: the longest time of all of them.
Result<DriveAwayResult> drive_away(const DriveAway& table);

}  // namespace jambline::trade

template <>
inline constexpr auto jambline::enum_words<jambline::trade::CureKind> =
    std::to_array<std::string_view>({"two-pack", "infrared", "uv", "moisture cure"});
template <>
inline constexpr auto jambline::enum_words<jambline::trade::CureMilestone> =
    std::to_array<std::string_view>({"dust free", "pull tape", "handle", "sand from", "polish from",
                                     "polish until", "assemble", "last polish", "full", "pot life",
                                     "handling strength", "full strength"});
template <>
inline constexpr auto jambline::enum_words<jambline::trade::ThumbnailCheck> =
    std::to_array<std::string_view>({"not asked", "firm", "not yet"});
template <>
inline constexpr auto jambline::enum_words<jambline::trade::CureWord> =
    std::to_array<std::string_view>({"reached", "not yet", "gated", "stalled", "not computed"});
