// app/demo/lateness.h: which delivered cars of the demo shop were promised for too early, and what
// they waited for meanwhile. Of a random stream of its own: nothing else of a car changes.
#pragma once

#include <optional>

#include "app/demo/visit.h"
#include "job/hold.h"

namespace jambline::demo {

struct Lateness {
  std::int64_t earlier_ms{};  // so much earlier it was promised
  job::WaitReason reason{};
};

// One car in eight.
std::optional<Lateness> lateness_of(SeededRandom random);

// The car waits from the last step of its first working day to the first one of its third.
void add_wait(Visit& visit, job::WaitReason reason, const Calendar& calendar, int came_workday,
              PersonId by);

}  // namespace jambline::demo
