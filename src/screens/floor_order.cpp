#include "screens/floor_order.h"

#include <algorithm>
#include <limits>

#include "screens/stage_roles.h"

namespace jambline::screens {

namespace {
enum Trouble : std::uint8_t { late, unlikely, unsaid, none };

const folds::RunningView* clock_on(const folds::FloorRow& car, const PersonId& person) {
  for (const auto& running : car.running)
    if (running.person == person) return &running;
  return nullptr;
}

Trouble trouble_of(const folds::FloorRow& car, const folds::Forecast* forecast,
                   std::int64_t now_ms) {
  if (!car.promised_ms) return car.disputed ? unsaid : none;
  if (*car.promised_ms < now_ms) return late;
  if (forecast && forecast->earliest_ms && *forecast->earliest_ms > *car.promised_ms) return late;
  if (forecast && forecast->promise_percent && *forecast->promise_percent < 50) return unlikely;
  if (car.disputed || (forecast && !forecast->likely_ms)) return unsaid;
  return none;
}

bool can_begin(const folds::FloorRow& car, const folds::Forecast* forecast, job::Stage stage) {
  if (!forecast) return car.next_stage == stage;
  return std::find(forecast->next.begin(), forecast->next.end(), stage) != forecast->next.end();
}

const folds::OperationView* work_for(const folds::FloorRow& car, const folds::Forecast* forecast,
                                     const folds::PersonView& person) {
  for (const auto& one : car.operations) {
    if (one.done || one.approval == job::Approval::Refused ||
        !usually_does(person.role, one.stage) || !can_begin(car, forecast, one.stage))
      continue;
    if (std::none_of(car.running.begin(), car.running.end(),
                     [&](const auto& running) { return running.operation == one.operation; }))
      return &one;
  }
  return nullptr;
}
}  // namespace

bool waits_for(const folds::FloorRow& car, const folds::PersonView* person) {
  if (!person) return false;
  if (clock_on(car, person->person)) return true;
  const auto& offers = car.offered_to;
  if (std::find(offers.begin(), offers.end(), person->role) != offers.end()) return true;
  if (person->role == job::Role::Manager && (car.disputed || !car.next_stage)) return true;
  return car.next_stage && usually_does(person->role, *car.next_stage);
}

FloorPlace place_of(const folds::FloorRow& car, const folds::Forecast* forecast, bool for_person,
                    std::int64_t now_ms) {
  const Trouble trouble = trouble_of(car, forecast, now_ms);
  return {!for_person, trouble, trouble == unlikely ? *forecast->promise_percent : 0,
          car.promised_ms.value_or(std::numeric_limits<std::int64_t>::max())};
}

std::optional<NextForPerson> next_for(
    const folds::PersonView& person,
    const std::vector<std::pair<const folds::FloorRow*, const folds::Forecast*>>& cars,
    std::int64_t now_ms) {
  for (const auto& [car, forecast] : cars) {
    const auto* clock = clock_on(*car, person.person);
    if (!clock) continue;
    if (!clock->paused) return std::nullopt;
    for (const auto& one : car->operations)
      if (one.operation == clock->operation)
        return NextForPerson{car->job, one.operation, one.stage, NextWhy::Paused};
  }
  int waiting = 0;
  std::optional<NextForPerson> out;
  for (const auto& [car, forecast] : cars) {
    if (car->read_only || car->disputed || !waits_for(*car, &person)) continue;
    const auto* work = work_for(*car, forecast, person);
    if (!work) continue;
    ++waiting;
    if (out) continue;
    const Trouble trouble = trouble_of(*car, forecast, now_ms);
    out = NextForPerson{car->job, work->operation, work->stage,
                        trouble == late       ? NextWhy::Late
                        : trouble == unlikely ? NextWhy::Unlikely
                        : car->promised_ms    ? NextWhy::Promised
                                              : NextWhy::Alone};
  }
  if (out && waiting == 1 && out->why != NextWhy::Late) out->why = NextWhy::Alone;
  return out;
}

}  // namespace jambline::screens
