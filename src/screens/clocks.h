// screens/clocks.h: the running and paused clocks of all cars, found by person, with their lengths
// as of now. A clock of this boot is measured by the boot clock, any other by wall time.
#pragma once

#include <optional>
#include <vector>

#include "base/clock.h"
#include "folds/floor_view.h"

namespace jambline::screens {

struct ClockOf {
  const folds::FloorRow* car = nullptr;
  const folds::RunningView* running = nullptr;
  const folds::OperationView* operation = nullptr;  // null when it was withdrawn
};

std::int64_t length_ms(const folds::RunningView& running, const Moment& now);
std::optional<ClockOf> clock_of(const std::vector<folds::FloorRow>& floor, const PersonId& person);
// Hours of an operation by all people: what is closed and what runs.
std::int64_t used_ms(const folds::FloorRow& car, const folds::OperationView& operation,
                     const Moment& now);
// What comes after `after` on this car by its plan and is not behind the car's next stage; with no
// `after`, the first one of what comes next. Null when nothing is planned any more.
const folds::OperationView* next_operation(const folds::FloorRow& car,
                                           const folds::OperationView* after);

}  // namespace jambline::screens
