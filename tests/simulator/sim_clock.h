// tests/simulator/sim_clock.h: one true time for all, and clocks that may tell another.
#pragma once

#include <vector>

#include "base/clock.h"

namespace jambline::simulator {

inline constexpr std::int64_t simulator_start_ms = 1804750000000;

struct TrueTime {
  std::int64_t ms = simulator_start_ms;
  // Of a clock that only goes forward.
  std::int64_t forward_ms() const { return ms - simulator_start_ms + 1'000; }
};

// What clocks are wrong by: right, three days ahead, two hours behind, 1970.
inline const std::vector<std::int64_t>& clock_errors_ms() {
  static const std::vector<std::int64_t> errors{0, 0, 3 * 86'400'000LL, -2 * 3'600'000LL,
                                                -simulator_start_ms + 60'000};
  return errors;
}

class SimClock final : public Clock {
 public:
  explicit SimClock(const TrueTime& time) : time_(time), boot_ms_(time.ms) { boot_.bytes[0] = 1; }
  std::int64_t error_ms = 0;
  Moment now() const override {
    return {time_.ms + error_ms, static_cast<std::uint64_t>(time_.ms - boot_ms_ + 1'000), boot_,
            60};
  }
  void boot(const BootId& boot) {
    boot_ = boot;
    boot_ms_ = time_.ms;
  }

 private:
  const TrueTime& time_;
  std::int64_t boot_ms_;
  BootId boot_;
};

}  // namespace jambline::simulator
