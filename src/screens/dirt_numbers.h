// screens/dirt_numbers.h: the numbers of "dirt over time": what the page shows is what
// trade::dirt_chart gives for the cars and events that are asked about.
//
// Cars:     counted ones (folds/lesson.h) by the end of their spraying; `left_out` are those that
//           are not looked over to the end.
// Events:   what was done to the booth, or to any, in that time. An effect is there from one car
//           before and after on; below ten it is too early to say. Flagged: the chance that the
//           same dirt fell this unevenly is below 1 in 100 after Holm's correction for all events.
// Causes:   what people said, most often first; "left open" is one of them.
// Painters: nibs over area of the cars that each sprayed, alone or with others; only those with 20
//           cars and more are ranked.
// Units:    per m2 of sprayed area; ms.
// Errors:   those of trade::dirt_chart. Threads: pure; for the calc lane.
#pragma once

#include <optional>
#include <vector>

#include "base/error.h"
#include "folds/lesson.h"
#include "folds/shop_view.h"
#include "trade/control_chart.h"

namespace jambline::screens {

struct DirtQuestion {
  std::optional<BoothId> booth;          // none: all of them
  std::optional<PersonId> painter;       // none: all of them
  std::optional<std::int64_t> since_ms;  // none: from the first car on
  bool by_painter = false;               // for a manager only
};

struct DirtCar {
  JobId job;
  std::int64_t sprayed_ms{};
  std::int64_t nibs{};
  bool all_over = false;
  double sprayed_m2{};
  trade::ChartPoint point;
};

struct DirtEvent {
  folds::BoothEventView logged;
  int cars_before = 0;  // up to the event before it
  int cars_after = 0;
  std::optional<trade::EventEffect> effect;
  bool enough() const { return effect && effect->enough_jobs; }
  bool flagged() const { return enough() && effect->holm_chance < 0.01; }
};

struct DirtCauseCount {
  std::optional<job::DirtCause> cause;  // none: left open
  int cars = 0;
};

struct DirtPainter {
  PersonId person;
  int cars = 0;
  std::int64_t nibs = 0;
  double sprayed_m2 = 0;
  trade::Interval rate_m2;  // 95 %
  bool ranked = false;
  double per_m2() const { return static_cast<double>(nibs) / sprayed_m2; }
};

struct DirtNumbers {
  std::vector<DirtCar> cars;
  std::vector<DirtEvent> events;
  std::vector<DirtCauseCount> causes;
  int cause_not_said = 0;
  std::vector<DirtPainter> painters;  // ranked ones first, least dirt first; then by cars
  int left_out = 0;
  std::int64_t nibs = 0;
  double sprayed_m2 = 0;
  trade::Basis basis;
};

inline constexpr int cars_to_rank = 20;

// Without cars: empty, no error.
Result<DirtNumbers> dirt_numbers(const DirtQuestion& question,
                                 const std::vector<folds::Lesson>& lessons,
                                 const folds::ShopView& shop);

}  // namespace jambline::screens
