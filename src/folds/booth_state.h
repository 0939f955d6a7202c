// folds/booth_state.h: how a booth stands now: sprayed in, clearing, or neither, and how long its
// air is left.
//
// Shape:  from what was said of it since its air was last logged as cleared. The count begins at
// the
//         last gun down and runs only on fresh air with the doors shut; a start of spraying says
//         that the exhaust is on fresh air. Times by folds/stamp.h, in the stricter way.
// Needed: by trade/clearance.h: a smoke test in date, the formula, the longer of both, or the
// shop's
//         fixed time; by the readings and facts of the booth. None of them: `needed` is empty and
//         nothing ever counts down.
// Promise: minutes and a word; never that a place is without danger.
// Pure.
#pragma once

#include <optional>
#include <vector>

#include "folds/shop_view.h"
#include "trade/airflow.h"
#include "trade/clearance.h"

namespace jambline::folds {

enum class BoothWordNow : std::uint8_t {
  Idle,         // nothing was sprayed since it was logged as cleared
  Spraying,     // a gun is up
  Counting,     // fresh air, doors shut
  NotCounting,  // the fan stopped, bake, a door open: it begins again with fresh air
  NoTime,       // nothing to go by
  TimeOver,     // the whole time has gone by in one piece; nobody logged it yet
};

struct BoothState {
  BoothWordNow word{};
  std::optional<trade::ClearanceResult> needed;
  std::optional<job::BoothWord> stopped_by;  // of NotCounting
  std::vector<BoothSaidView> up;             // starts whose gun is not down
  std::optional<BoothSaidView> last_down;
  double left_s = 0;  // of Counting; the whole time where it does not count
  int restarts = 0;
};

BoothState booth_state(const BoothView& booth, const BoothAirView* air, const Moment& now);

// How long the air is left, as of now.
Result<trade::ClearanceResult> clearance_needed(const BoothView& booth, const BoothAirView* air,
                                                const Moment& now);

// The last reading of a kind, or null.
const BoothReadView* last_reading(const BoothAirView* air, job::BoothReading what);
std::optional<std::int64_t> smoke_test_due_ms(const BoothAirView& air);
// The air against what is required; Missing without either.
Result<trade::AirflowResult> booth_airflow(const BoothAirView& air);
// When the filter pressure reaches its most, from the readings since the filters were changed.
Result<trade::FilterTrendResult> filter_trend(const ShopView& shop, const BoothAirView& air);

}  // namespace jambline::folds
