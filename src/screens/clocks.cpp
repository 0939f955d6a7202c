#include "screens/clocks.h"

#include <algorithm>

namespace jambline::screens {

std::int64_t length_ms(const folds::RunningView& running, const Moment& now) {
  const bool same_boot = running.start_boot == now.boot;
  const std::int64_t ms = same_boot ? static_cast<std::int64_t>(now.since_boot_ms) -
                                          static_cast<std::int64_t>(running.start_since_boot_ms)
                                    : now.wall_ms - running.start_ms;
  return std::max<std::int64_t>(0, ms);
}

std::optional<ClockOf> clock_of(const std::vector<folds::FloorRow>& floor, const PersonId& person) {
  if (!person) return std::nullopt;
  for (const auto& car : floor)
    for (const auto& running : car.running) {
      if (running.person != person) continue;
      ClockOf found{&car, &running, nullptr};
      for (const auto& operation : car.operations)
        if (operation.operation == running.operation) found.operation = &operation;
      return found;
    }
  return std::nullopt;
}

std::int64_t used_ms(const folds::FloorRow& car, const folds::OperationView& operation,
                     const Moment& now) {
  std::int64_t sum = operation.clocked_ms;
  for (const auto& running : car.running)
    if (running.operation == operation.operation && !running.paused) sum += length_ms(running, now);
  return sum;
}

const folds::OperationView* next_operation(const folds::FloorRow& car,
                                           const folds::OperationView* after) {
  bool passed = after == nullptr;
  for (const auto& operation : car.operations) {
    const bool ahead = car.next_stage && operation.stage >= *car.next_stage;
    if (passed && ahead) return &operation;
    if (after && operation.operation == after->operation) passed = true;
  }
  return nullptr;
}

}  // namespace jambline::screens
