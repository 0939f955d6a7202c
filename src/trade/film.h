// trade/film.h: how much clear is there, and may it be cut?
//
// Clear:   from the best source that was given: 1 a multi-layer ultrasonic reading; 2 total after
//          painting less total before base (taken at prep), less base and sealer; 3 coats x build.
//          Gauges of types 1 and 2 read everything down to metal and nothing on plastic or carbon,
//          so source 2 wants metal. Less an allowance for valleys of the surface; near an edge or
//          body line the clear is thinner by a share.
// Spot:    the mean of its readings (3 or more wanted; SSPC-PA 2 takes 3 in a 4 cm circle). Totals
//          come in pairs, after painting and before base: one without the other is refused.
// Steps:   each takes its removal with its spread; variances add.
// Limits:  two, the stricter wins: clear to be left, and what may be taken in the panel's life,
//          earlier cutting of the same clear counted; what was taken after the readings is no
//          longer there. Defaults are common practice, no source.
// Word:    room: chance of passing a limit at most 2.5 %; one light pass: the lightest step alone
//          still has room by that rule, or the whole passes only just (under 50 %); do not cut:
//          else, and always for matte, textured, film or wrap.
// Errors:  OutOfRange, Missing, TooLarge. Threads: pure.
#pragma once

#include <array>
#include <string_view>

#include "base/error.h"
#include "trade/basis.h"
#include "trade/panel_shape.h"
#include "trade/probability.h"

namespace jambline::trade {

// What lies under the film, as a gauge sees it.
using FilmSubstrate = Substrate;
enum class FilmSource : std::uint8_t { Ultrasonic, TotalLessBase, CoatsTimesBuild };
enum class FilmWord : std::uint8_t { Room, OneLightPass, DoNotCut };
enum class FilmBound : std::uint8_t { ClearLeft, TakenInLife, Surface };

struct Spread_um {
  double mean_um{};
  double sd_um{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "mean_um", .unit = "um", .min = 0, .max = 2000}, self.mean_um);
    visit(Field{.name = "sd_um", .unit = "um", .min = 0, .max = 500}, self.sd_um);
  }
};

// Common practice, no source: base of 12 to 25, of a tri-coat 25 to 45; two coats of clear 50 to
// 60; the clear of a new car 40 to 60.
inline constexpr Spread_um usual_base{18, 4};
inline constexpr Spread_um usual_tri_coat_base{35, 5};
inline constexpr Spread_um usual_build_per_coat{28, 6};
inline constexpr Spread_um usual_factory_clear{48, 6};

struct CutStep {
  std::string name;
  Spread_um removal;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "removal", .doc = "of one normal dose over the area"}, self.removal);
  }
};

struct FilmBudget {
  FilmSubstrate substrate{};
  bool may_be_cut = true;              // false: matte, satin, textured, film or wrap
  std::vector<double> clear_um;        // ultrasonic readings of the clear itself
  std::vector<double> total_after_um;  // gauge, after painting
  std::vector<double> total_before_base_um;
  Spread_um base = usual_base;
  std::optional<Spread_um> sealer;  // 15 to 30 where it was used
  int coats = 2;
  Spread_um build_per_coat = usual_build_per_coat;
  double gauge_sd_um = 1.5;              // of one reading
  Spread_um valleys{4, 1};               // 2 to 6
  double edge_thinner_percent = 0;       // 20 to 50 near an edge or body line
  std::vector<CutStep> steps;            // in the order in which they are done
  double taken_before_um = 0;            // of the same clear, before it was read
  std::optional<Spread_um> taken_since;  // of the same clear, after it was read
  double leave_um = 40;
  double take_at_most_um = 12;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "substrate"}, self.substrate);
    visit(Field{.name = "may_be_cut", .doc = "false for matte, satin, textured, film and wrap"},
          self.may_be_cut);
    visit(Field{.name = "clear_um",
                .unit = "um",
                .doc = "ultrasonic, the clear itself",
                .min = 1,
                .max = 500},
          self.clear_um);
    visit(Field{.name = "total_after_um",
                .unit = "um",
                .doc = "gauge, after painting",
                .min = 1,
                .max = 3000},
          self.total_after_um);
    visit(Field{.name = "total_before_base_um",
                .unit = "um",
                .doc = "gauge, at prep",
                .min = 0,
                .max = 3000},
          self.total_before_base_um);
    visit(Field{.name = "base"}, self.base);
    visit(Field{.name = "sealer"}, self.sealer);
    visit(Field{.name = "coats", .min = 1, .max = 6}, self.coats);
    visit(Field{.name = "build_per_coat"}, self.build_per_coat);
    visit(Field{.name = "gauge_sd_um", .unit = "um", .min = 0.1, .max = 20}, self.gauge_sd_um);
    visit(Field{.name = "valleys"}, self.valleys);
    visit(Field{.name = "edge_thinner_percent", .unit = "%", .min = 0, .max = 90},
          self.edge_thinner_percent);
    visit(Field{.name = "steps"}, self.steps);
    visit(Field{.name = "taken_before_um", .unit = "um", .min = 0, .max = 500},
          self.taken_before_um);
    visit(Field{.name = "taken_since", .doc = "of the same clear, after the readings"},
          self.taken_since);
    visit(Field{.name = "leave_um", .unit = "um", .min = 1, .max = 500}, self.leave_um);
    visit(Field{.name = "take_at_most_um", .unit = "um", .min = 0.1, .max = 500},
          self.take_at_most_um);
  }
};

struct FilmAfterStep {
  std::string name;
  Spread_um left;
  Spread_um taken;          // in the panel's life
  double chance_percent{};  // of passing the stricter limit

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "left"}, self.left);
    visit(Field{.name = "taken"}, self.taken);
    visit(Field{.name = "chance_percent", .unit = "%"}, self.chance_percent);
  }
};

struct FilmBudgetResult {
  FilmWord word{};
  FilmBound bound_by{};  // the stricter limit
  FilmSource source{};
  Spread_um clear;         // before the steps
  double likely_low_um{};  // 90 % of what it could be
  double likely_high_um{};
  double chance_percent{};  // after all steps
  std::vector<FilmAfterStep> after;
  std::string widest;  // the term that makes most of the spread
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "word"}, self.word);
    visit(Field{.name = "bound_by"}, self.bound_by);
    visit(Field{.name = "source"}, self.source);
    visit(Field{.name = "clear"}, self.clear);
    visit(Field{.name = "likely_low_um", .unit = "um"}, self.likely_low_um);
    visit(Field{.name = "likely_high_um", .unit = "um"}, self.likely_high_um);
    visit(Field{.name = "chance_percent", .unit = "%"}, self.chance_percent);
    visit(Field{.name = "after"}, self.after);
    visit(Field{.name = "widest"}, self.widest);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<FilmBudgetResult> film_budget(const FilmBudget& budget);

// What this shop's whole sequences take, from readings before and after on the same taped spot.
// Normal-normal update; Gelman et al., Bayesian Data Analysis 3rd ed. section 2.5. Whole sequences
// only: one step takes less than the gauge can see. Not from fewer than 5; not shown under 10.
struct RemovalLearning {
  Spread_um prior;               // of the whole sequence
  std::vector<double> taken_um;  // before less after, each a mean of 3 readings
  double gauge_sd_um = 1.5;
  int readings_a_mean = 3;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "prior"}, self.prior);
    visit(Field{.name = "taken_um", .unit = "um", .min = -20, .max = 200}, self.taken_um);
    visit(Field{.name = "gauge_sd_um", .unit = "um", .min = 0.1, .max = 20}, self.gauge_sd_um);
    visit(Field{.name = "readings_a_mean", .min = 1, .max = 100}, self.readings_a_mean);
  }
};

struct RemovalLearningResult {
  Spread_um learned;  // the prior while there are fewer than 5
  bool updated = false;
  bool shown = false;  // from 10 on
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "learned"}, self.learned);
    visit(Field{.name = "updated"}, self.updated);
    visit(Field{.name = "shown"}, self.shown);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<RemovalLearningResult> learn_removal(const RemovalLearning& learning);

// Spots and areas against a wanted film: SSPC-PA 2 (as of 1996): the area's mean within limits,
// each spot at least 80 % of the least and at most 120 % of the most; single readings are not
// judged.
struct FilmAcceptance {
  std::vector<double> spots_um;
  double least_um{};
  double most_um{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "spots_um", .unit = "um", .min = 0, .max = 5000}, self.spots_um);
    visit(Field{.name = "least_um", .unit = "um", .min = 0.1, .max = 5000}, self.least_um);
    visit(Field{.name = "most_um", .unit = "um", .min = 0.1, .max = 5000}, self.most_um);
  }
};

struct FilmAcceptanceResult {
  double mean_um{};
  double spot_least_um{};
  double spot_most_um{};
  bool accepted = false;
  std::vector<int> bad_spots;  // by place, from 0
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "mean_um", .unit = "um"}, self.mean_um);
    visit(Field{.name = "spot_least_um", .unit = "um"}, self.spot_least_um);
    visit(Field{.name = "spot_most_um", .unit = "um"}, self.spot_most_um);
    visit(Field{.name = "accepted"}, self.accepted);
    visit(Field{.name = "bad_spots"}, self.bad_spots);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<FilmAcceptanceResult> accept_film(const FilmAcceptance& acceptance);

}  // namespace jambline::trade

template <>
inline constexpr auto jambline::enum_words<jambline::trade::FilmSource> =
    std::to_array<std::string_view>({"ultrasonic", "total less base", "coats x build"});
template <>
inline constexpr auto jambline::enum_words<jambline::trade::FilmWord> =
    std::to_array<std::string_view>({"room", "one light pass", "do not cut"});
template <>
inline constexpr auto jambline::enum_words<jambline::trade::FilmBound> =
    std::to_array<std::string_view>({"clear left", "taken in life", "surface"});
