// folds/cure_of_car.h: the cure clocks of a car: each mix on each group of panels that it was
// sprayed on, and what was bonded.
//
// Shape:  one clock a mix and panel group with standings by trade/cure_clock.h; times there are
//         minutes since the last coat, and `coated` says when that was. Temperatures are those that
//         were read on the group since then; before the first one the colder of it and 20 C is
//         taken. Without any reading nothing is computed. Pot life is the mix's and not here.
// Warm:   a reading over 20 C is believed for an hour, and no longer than the bake that it was read
//         in; then 20 C is taken and `read_again` is set, unless it is read within the next hour
//         (common practice, no source).
// Bonds:  handling and full strength as milestones; of glass "do not drive until" from the maker's
//         table by the coldest and driest air that was logged since it was set. No table, no case,
//         or colder or drier than the table: no time, and the car is not driven. Time that has
//         passed is that of folds/stamp.h.
// Learned: by folds/learned_film.h, where it is given; without it the sheet's times hold.
// Pure.
#pragma once

#include <optional>
#include <vector>

#include "folds/car_view.h"
#include "folds/learned_film.h"
#include "folds/set_glass.h"
#include "folds/shop_view.h"
#include "trade/cure_clock.h"

namespace jambline::folds {

struct CureOfGroup {
  MixId mix;
  ProductId product;
  job::PanelGroup group{};
  std::vector<job::Panel> panels;
  Stamp coated;                     // the last coat
  std::optional<double> surface_c;  // as last read
  std::optional<Stamp> read_at;
  bool read_again = false;  // what was read last is no longer believed
  LearnedFilm::Of learned = {};
  std::optional<trade::CureClock> asked;
  std::optional<Result<trade::CureResult>> result;  // none: no temperature was read
};

struct BondOfCar {
  BondId bond;
  ProductId product;
  std::string what;
  std::string case_name;
  bool glass = false;
  std::int64_t set_ms{};
  std::optional<trade::DriveAway> asked;
  std::optional<Result<trade::DriveAwayResult>> result;  // of glass with a table
  std::optional<std::int64_t> drive_from_ms;             // none: do not drive
  std::optional<trade::CureClock> strength_asked;
  std::optional<Result<trade::CureResult>> strength;  // handling and full, where the sheet says
};

std::vector<CureOfGroup> cure_of_car(const CarView& car, const ShopView& shop, const Moment& now,
                                     const LearnedFilm& learned = {});
std::vector<BondOfCar> bonds_of_car(const CarView& car, const ShopView& shop, const Moment& now);

// The last coat on the group; null: none. Lives as long as `cures`.
const CureOfGroup* film_of_group(const std::vector<CureOfGroup>& cures, job::PanelGroup group);
// Of the time until the film may be polished, else sanded, else polished last; none: not counted.
std::optional<double> touch_percent(const CureOfGroup& film);

// The milestone of what was coated on the panel last by a product whose sheet knows it; null: no
// such clock. Both live as long as `cures`.
struct FilmStanding {
  const CureOfGroup* group = nullptr;
  const trade::CureStanding* standing = nullptr;
};
FilmStanding standing_of(const std::vector<CureOfGroup>& cures, job::Panel panel,
                         trade::CureMilestone milestone);

// Of all glass on the car: the latest; nullopt inside: no time can be said. Outer: no glass, or its
// time is over.
struct DoNotDrive {
  std::optional<std::int64_t> until_ms;  // none: not until the maker's table says so
};
std::optional<DoNotDrive> do_not_drive(const std::vector<SetGlass>& glass, const ShopView& shop,
                                       const Moment& now);
std::optional<DoNotDrive> do_not_drive(const CarView& car, const ShopView& shop, const Moment& now);

}  // namespace jambline::folds
