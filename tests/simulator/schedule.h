// tests/simulator/schedule.h: one seed is one schedule: 20 to 60 steps of acts, sync and faults
// drawn from it, then calm and the oracle.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

namespace jambline::simulator {

struct Ran {
  std::vector<std::string> complaints;
  std::uint64_t acts = 0;
  std::uint64_t mishaps = 0;
  bool forked = false;
  bool revoked = false;
  bool hub_put_back = false;
};

// Faults 1, 4 to 18 and 20 of FAULTS.md.
Ran run_schedule(std::uint64_t seed, std::function<void(const std::string&)> say = {});

}  // namespace jambline::simulator
