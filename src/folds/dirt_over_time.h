// folds/dirt_over_time.h: the dirt of a shop's cars in the order of their spraying, what was done
// to its booths in between, and what people said threw it.
//
// Cars:    counted ones (folds/lesson.h) that the question asks for, by the end of their spraying.
//          Not looked over to the end: only counted as left out.
// Changes: what was done to the booths asked for. Things done with no car between them are one
//          change, for what they did cannot be told apart. `enough`: ten cars before it, up to the
//          change before, and ten after; else it is too early to say.
// Causes:  of the same cars, most often said first; "left open" is one of them and "chance"
// another.
//          Not said: cars with dirt of which nobody said anything.
// Chart:   days since 1970 in UTC with their part of the day, so that the order within a day holds.
// Threads: pure; for the calc lane.
#pragma once

#include <optional>
#include <vector>

#include "folds/lesson.h"
#include "folds/shop_view.h"
#include "trade/control_chart.h"

namespace jambline::folds {

struct DirtAsked {
  std::optional<BoothId> booth = {};          // none: all of them
  std::optional<PersonId> painter = {};       // none: all of them
  std::optional<std::int64_t> since_ms = {};  // none: from the first car on
};

struct BoothChange {
  std::vector<BoothEventView> done;  // by when it happened; the first one's time is the change's
  int cars_before = 0;
  int cars_after = 0;
  bool enough() const;
};

struct CauseCount {
  std::optional<job::DirtCause> cause;  // none: left open
  int cars = 0;
  friend bool operator==(const CauseCount&, const CauseCount&) = default;
};

struct DirtOverTime {
  std::vector<Lesson> cars;          // one a job of the chart
  std::vector<BoothChange> changes;  // one an event of the chart
  trade::DirtChart chart;            // events named after the first thing done
  int left_out = 0;
  std::vector<CauseCount> causes;
  int cause_not_said = 0;
};

DirtOverTime dirt_over_time(const std::vector<Lesson>& lessons,
                            const std::vector<BoothEventView>& events, const DirtAsked& asked);

// What the chart says of a change; null where no car stands before or after it.
const trade::EventEffect* effect_of(const DirtOverTime& dirt, std::size_t change,
                                    const trade::DirtChartResult& result);

// The dirt changed when this was done, by more than chance; never: because of it.
inline constexpr double flagged_below = 0.01;  // of Holm's chance over all changes
bool flagged(const trade::EventEffect& effect);

}  // namespace jambline::folds
