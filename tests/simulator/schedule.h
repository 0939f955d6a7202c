// tests/simulator/schedule.h: one seed is one schedule: 20 to 60 steps of acts, sync and faults
// drawn from it, then calm and the oracle.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "tests/simulator/met.h"

namespace jambline::simulator {

struct Ran {
  std::vector<std::string> complaints;
  std::uint64_t acts = 0;
  std::uint64_t mishaps = 0;
  MetFaults met{};
};

// All faults of FAULTS.md but 19, and of 2 and 3 what is above SQLite's file calls.
Ran run_schedule(std::uint64_t seed, std::function<void(const std::string&)> say = {});

}  // namespace jambline::simulator
