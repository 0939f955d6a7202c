// acts/decide.h: from a command and what is known to the entries that say it, or why not.
//
// Pure:   no clock, no disk, no randomness but `random` for the ids of new things. `now_ms` is only
//         for what cannot have happened yet.
// Errors: Missing, OutOfRange, Unknown, VinCheckFails, NotRunning, AlreadyRunning, AlreadyDone,
//         NotAllowed, OutsidePanel, TooLarge, Disputed, NotYet, NewerSchema (job with unknown
//         entries). With an error nothing is to be written.
#pragma once

#include <functional>
#include <vector>

#include "acts/commands.h"
#include "base/clock.h"
#include "base/error.h"
#include "base/random.h"
#include "entries/rights.h"
#include "folds/car_view.h"
#include "folds/floor_view.h"
#include "folds/shop_view.h"

namespace jambline::acts {

struct World {
  const folds::ShopView& shop;
  // The view of a job, or null when there is none.
  std::function<const folds::CarView*(const JobId&)> car;
  // Where the person's clock runs or is paused: the job, or nullopt.
  std::function<std::optional<JobId>(const PersonId&)> clock_of;
  // What it needs to take this entry back, of the job or, without one, of the shop. Empty: nothing.
  std::function<entries::Right(const JobId&, const Hash&)> needed = {};
  bool manager_device = true;  // the device that decides is one
};

struct Context {
  PersonId person;  // who taps
  Random& random;
  std::int64_t now_ms{};  // as the device believes
  Moment now{};           // the same with the device's own timer; for what has to wait
};

struct Draft {
  JobId subject;
  entries::Payload payload;
};

Result<std::vector<Draft>> decide(const World& world, const Command& command,
                                  const Context& context);

// Erasing is no entry to be decided but a hole made in the log: a manager may do it with the name
// of somebody who has left.
// What was said of him is erased with it (fit tests, due days, "do not spray", samples), and what
// he opened first aid for.
Status may_erase_name(const folds::ShopView& shop, const PersonId& person, const PersonId& by);
bool goes_with_name(const entries::Entry& entry, const PersonId& person);

}  // namespace jambline::acts
