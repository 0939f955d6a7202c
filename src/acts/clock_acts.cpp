#include <algorithm>

#include "acts/decisions.h"

namespace jambline::acts {

namespace {
struct At {
  const folds::CarView* car;
  const folds::RunningView* running;
};

// The person's clock that runs or is paused, or nothing.
std::optional<At> clock_of(const Scene& scene, const PersonId& worker) {
  const auto job = scene.world.clock_of(worker);
  if (!job) return std::nullopt;
  const folds::CarView* car = scene.world.car(*job);
  if (!car) return std::nullopt;
  for (const auto& running : car->running)
    if (running.person == worker) return At{car, &running};
  return std::nullopt;
}

Status known(const Scene& scene, const PersonId& worker, const char* operation) {
  const auto* person = scene.world.shop.find(worker);
  if (!person || person->left) return fail(Code::Unknown, operation, "person");
  return {};
}

std::string name_of(const Scene& scene, const PersonId& worker) {
  const auto* person = scene.world.shop.find(worker);
  return person ? person->name : std::string();
}
}  // namespace

// Starting elsewhere ends what ran, in the same action.
Drafts decide_one(const Scene& scene, const StartClock& command) {
  const char* const operation = "start the clock";
  JAMBLINE_TRY(known(scene, command.worker, operation));
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, operation));
  if (!car->find(command.operation)) return fail(Code::Unknown, operation, "operation");
  const auto at = clock_of(scene, command.worker);
  const bool runs = at && !at->running->paused;
  const bool same_car = at && at->car->job == command.job;
  if (runs && same_car && at->running->operation == command.operation)
    return fail(Code::AlreadyRunning, operation, name_of(scene, command.worker));
  if (command.started_ms) {
    // Only where nothing of that person runs, and after the last thing that the clock did here.
    if (at) return fail(Code::AlreadyRunning, operation, name_of(scene, command.worker));
    JAMBLINE_TRY(not_to_come(command.started_ms, scene, operation));
    for (const auto& act : car->visit.clock_acts)
      if (act.worker == command.worker && act.at_ms > *command.started_ms)
        return fail(Code::OutOfRange, operation, "time");
  }
  std::vector<Draft> out;
  if (at && !same_car) {
    JAMBLINE_TRY(scene.car(at->car->job, operation));
    out.push_back({at->car->job, entries::ClockActed{command.worker, entries::ClockActKind::Stop,
                                                     at->running->operation}});
  }
  const auto act = runs && same_car ? entries::ClockActKind::Switch : entries::ClockActKind::Start;
  out.push_back({command.job,
                 entries::ClockActed{command.worker, act, command.operation, command.started_ms}});
  return out;
}

Drafts decide_one(const Scene& scene, const PauseClock& command) {
  JAMBLINE_TRY(known(scene, command.worker, "pause the clock"));
  const auto at = clock_of(scene, command.worker);
  if (!at || at->running->paused)
    return fail(Code::NotRunning, "pause the clock", name_of(scene, command.worker));
  JAMBLINE_TRY(scene.car(at->car->job, "pause the clock"));
  return std::vector<Draft>{
      {at->car->job,
       entries::ClockActed{command.worker, entries::ClockActKind::Pause, at->running->operation}}};
}

Drafts decide_one(const Scene& scene, const StopClock& command) {
  JAMBLINE_TRY(known(scene, command.worker, "stop the clock"));
  const auto at = clock_of(scene, command.worker);
  if (!at) return fail(Code::NotRunning, "stop the clock", name_of(scene, command.worker));
  JAMBLINE_TRY(scene.car(at->car->job, "stop the clock"));
  if (command.ended_ms && (at->running->paused || *command.ended_ms < at->running->start_ms))
    return fail(Code::OutOfRange, "stop the clock", "time");
  return std::vector<Draft>{
      {at->car->job, entries::ClockActed{command.worker, entries::ClockActKind::Stop,
                                         at->running->operation, command.ended_ms}}};
}

Drafts decide_one(const Scene& scene, const AmendClock& command) {
  const char* const operation = "amend the clock";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, operation));
  JAMBLINE_ASSIGN(std::string reason, typed(command.reason, operation, "reason", most_text_bytes));
  JAMBLINE_TRY(not_to_come(command.at_ms, scene, operation));
  std::vector<const folds::ClockActView*> own;
  for (const auto& act : car->visit.clock_acts)
    if (act.entry == command.act)
      for (const auto& other : car->visit.clock_acts)
        if (other.worker == act.worker) own.push_back(&other);
  if (own.empty()) return fail(Code::Unknown, operation, "act");
  const auto found = std::find_if(own.begin(), own.end(),
                                  [&](const auto* one) { return one->entry == command.act; });
  const auto* act = *found;
  if (act->at_ms == command.at_ms) return fail(Code::AlreadyDone, operation, "time");
  const bool after_the_one_before =
      found == own.begin() || own[found - own.begin() - 1]->at_ms <= command.at_ms;
  const bool before_the_next = found + 1 == own.end() || command.at_ms <= (*(found + 1))->at_ms;
  if (!after_the_one_before || !before_the_next) return fail(Code::OutOfRange, operation, "time");
  return std::vector<Draft>{{command.job, entries::ClockAmended{command.act, command.at_ms,
                                                                std::move(reason), act->heads}}};
}

}  // namespace jambline::acts
