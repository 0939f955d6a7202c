// folds/stamp.h: when an entry was made, as its device knew it, and how long ago that is.
//
// Rule: within one boot of a device its own timer counts, which no clock change and no suspend can
//       bend; across boots the wall clock does, and an entry from the future is of just now. Both
//       ways the shorter time has passed, which is the stricter outcome for what has to wait.
// Pure.
#pragma once

#include <cstdint>

#include "base/clock.h"
#include "base/describe.h"
#include "entries/entry.h"

namespace jambline::folds {

struct Stamp {
  std::int64_t wall_ms{};
  std::uint64_t since_boot_ms{};
  BootId boot;
  entries::Order order;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "wall_ms", .unit = "ms"}, self.wall_ms);
    visit(Field{.name = "since_boot_ms", .unit = "ms"}, self.since_boot_ms);
    visit(Field{.name = "boot"}, self.boot);
  }
  friend bool operator==(const Stamp&, const Stamp&) = default;
};

inline Stamp stamp_of(const entries::Entry& entry) {
  return {entry.wall_ms, entry.boottime_ms, entry.boot, entry.order};
}

// Never negative.
inline std::int64_t elapsed_ms(const Stamp& at, const Moment& now) {
  if (at.boot == now.boot)
    return now.since_boot_ms > at.since_boot_ms
               ? static_cast<std::int64_t>(now.since_boot_ms - at.since_boot_ms)
               : 0;
  return now.wall_ms > at.wall_ms ? now.wall_ms - at.wall_ms : 0;
}

}  // namespace jambline::folds
