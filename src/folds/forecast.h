// folds/forecast.h: when a car of the floor will be ready, what holds it, and what comes next.
//
// Work:   operations that are not done, in the order of the stages; glass beside assembling. One
//         is as long as estimated, times what the shop's own cars say of that stage, less what was
//         clocked on it; without an estimate `unestimated_min`; what was begun may take
//         `overrun_min` more, however long it took (both common practice, no source).
// Holds:  what the car waits for until a date is a wait before the stage it holds. A hold without a
//         date, or with one that has passed: no chance is given, for nobody can say; what it holds
//         cannot be begun.
// Open:   the shop's calendar for the next `days_ahead` days.
// Says:   chance of the promise by trade/ready_by.h; what holds it is the hold or the work at which
//         the row of work that ends last begins; slack is promise less likely finish, shut hours
//         counted too.
// Pure; some milliseconds a car: for the calc lane.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "folds/floor_view.h"
#include "folds/learned_durations.h"
#include "folds/shop_view.h"
#include "trade/ready_by.h"

namespace jambline::folds {

inline constexpr double unestimated_min = 30;
inline constexpr double overrun_min = 15;
inline constexpr int days_ahead = 120;

struct Forecast {
  JobId job;
  std::optional<std::int64_t> earliest_ms;
  std::optional<std::int64_t> likely_ms;
  std::optional<std::int64_t> late_ms;  // nine in ten are ready by then
  std::optional<double> promise_percent;
  std::optional<std::int64_t> slack_ms;
  std::optional<job::Stage> held_by_stage;
  std::optional<HoldView> held_by;  // a hold that is waited for longest, or one without a date
  std::vector<job::Stage> next;     // can be begun now
  int operations = 0;
  int learned_from = 0;  // the fewest cars that a used spread rests on; 0: some are usual ones
  std::optional<trade::ReadyBy> asked;
  std::optional<trade::ReadyByResult> result;
};

// What was asked, or why there is nothing to forecast (AlreadyDone: no work is left).
Result<trade::ReadyBy> forecast_asked(const FloorRow& car, const ShopView& shop,
                                      const LearnedDurations& learned, std::int64_t now_ms,
                                      int trials);
Result<Forecast> forecast_of(const FloorRow& car, const ShopView& shop,
                             const LearnedDurations& learned, std::int64_t now_ms,
                             int trials = 2000);

}  // namespace jambline::folds
