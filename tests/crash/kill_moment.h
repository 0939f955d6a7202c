#pragma once

// When to kill a child that says what it has done: somewhere in its start or between two of its
// steps, measured in how long these take on this disk. So every disk, however slow, sees some of
// the work done and some of it cut.
#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <functional>
#include <thread>

#include "base/random.h"

namespace jambline::test {

// How often to kill: `usual`, or fewer when JAMBLINE_CRASH_ROUNDS says so.
inline int crash_rounds(int usual) {
  const char* said = std::getenv("JAMBLINE_CRASH_ROUNDS");
  return said ? std::max(1, std::min(usual, std::atoi(said))) : usual;
}

class KillMoment {
 public:
  explicit KillMoment(std::uint64_t seed) : random_(seed) {}

  // Returns at the moment; the child was started just before. `hear` waits for the next thing that
  // the child says and is false when it has ended.
  void wait(const std::function<bool()>& hear) {
    const std::uint64_t steps = start_.count() == 0 ? 1 : random_.below(4);
    for (std::uint64_t i = 0; i < steps; ++i) {
      const auto began = std::chrono::steady_clock::now();
      if (!hear()) return;
      const auto took = std::chrono::duration_cast<std::chrono::microseconds>(
          std::chrono::steady_clock::now() - began);
      auto& longest = i == 0 ? start_ : step_;
      longest = std::max(longest, took);
    }
    const auto longest = steps == 0 || step_.count() == 0 ? start_ : step_;
    const auto most_us = static_cast<std::uint64_t>(longest.count()) + 100;
    std::this_thread::sleep_for(std::chrono::microseconds(random_.below(most_us)));
  }

 private:
  SeededRandom random_;
  std::chrono::microseconds start_{0};  // the longest, from its start to the first thing said
  std::chrono::microseconds step_{0};   // and from one to the next
};

}  // namespace jambline::test
