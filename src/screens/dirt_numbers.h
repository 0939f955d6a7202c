// screens/dirt_numbers.h: the numbers of "dirt over time": what the page shows is what
// trade::dirt_chart gives for the cars and changes of folds/dirt_over_time.h.
//
// Effects:  from one car before and after a change on; below ten it is too early to say.
// Painters: nibs over area of the cars that each sprayed, alone or with others; only those with 20
//           cars and more are ranked.
// Units:    per m2 of sprayed area; ms.
// Errors:   those of trade::dirt_chart. Threads: pure; for the calc lane.
#pragma once

#include <optional>
#include <vector>

#include "base/error.h"
#include "folds/dirt_over_time.h"
#include "trade/control_chart.h"

namespace jambline::screens {

struct DirtCar {
  folds::Lesson lesson;
  trade::ChartPoint point;
};

struct DirtChange {
  folds::BoothChange change;
  std::optional<trade::EventEffect> effect;
  std::int64_t happened_ms() const { return change.done.front().happened_ms; }
  bool enough() const { return effect && change.enough(); }
  bool flagged() const { return effect && folds::flagged(*effect); }
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
  std::vector<DirtCar> cars;  // by the end of their spraying
  std::vector<DirtChange> changes;
  std::vector<folds::CauseCount> causes;
  int cause_not_said = 0;
  std::vector<DirtPainter> painters;  // ranked ones first, least dirt first; then by cars
  int left_out = 0;
  std::int64_t nibs = 0;
  double sprayed_m2 = 0;
  trade::Basis basis;
};

inline constexpr int cars_to_rank = 20;

// by_painter: for a manager only. Without cars: empty, no error.
Result<DirtNumbers> dirt_numbers(const folds::DirtAsked& asked, bool by_painter,
                                 const std::vector<folds::Lesson>& lessons,
                                 const std::vector<folds::BoothEventView>& events);

}  // namespace jambline::screens
