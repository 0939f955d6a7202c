// base/clock.h: the three things a device knows about time.
//
// wall_ms        UTC milliseconds since 1970 as the device believes; may be wrong, may jump.
// since_boot_ms  CLOCK_BOOTTIME: goes on in suspend, never jumps, starts again at each boot.
// boot           random per boot (the kernel's boot_id): says which since_boot_ms are comparable.
// Nothing below app/ makes a clock; it is passed in. Tests use FakeClock.
#pragma once

#include <cstdint>

#include "base/ids.h"

namespace jambline {

struct Moment {
  std::int64_t wall_ms{};
  std::uint64_t since_boot_ms{};
  BootId boot{};
  std::int16_t offset_min{};  // local time minus UTC at that wall time
};

class Clock {
 public:
  virtual ~Clock() = default;
  virtual Moment now() const = 0;  // any thread
};

// The machine's own clocks (Linux). `offset_min` comes from the machine's zone.
class SystemClock final : public Clock {
 public:
  SystemClock();
  Moment now() const override;

 private:
  BootId boot_;
};

// A clock that a test or the demo generator turns by hand.
class FakeClock final : public Clock {
 public:
  Moment moment;
  Moment now() const override { return moment; }
  void advance_ms(std::int64_t ms) {
    moment.wall_ms += ms;
    moment.since_boot_ms += static_cast<std::uint64_t>(ms);
  }
};

}  // namespace jambline
