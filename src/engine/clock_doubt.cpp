#include "engine/clock_doubt.h"

namespace jambline::engine {

namespace {
constexpr std::int64_t start_of_2025_ms = 1735689600000;
}

std::optional<Error> clock_doubt(std::uint8_t flags) {
  const char* flag = (flags & seal::clock_flag::before_2025)    ? "before_2025"
                     : (flags & seal::clock_flag::stepped_back) ? "stepped_back"
                     : (flags & seal::clock_flag::jumped)       ? "jumped"
                                                                : nullptr;
  if (!flag) return std::nullopt;
  return Error{Code::OutOfRange, "look at the clock", "clock", {{"flag", flag}}};
}

std::optional<Error> clock_doubt_at_start(log::EntryLog& log, const DeviceId& own,
                                          const Moment& now) {
  std::uint8_t flags = now.wall_ms < start_of_2025_ms ? seal::clock_flag::before_2025 : 0;
  for (const auto& head : log.heads())
    if (head.device == own)
      (void)log.read_device(head.device, head.seq, [&](const log::Stored& last) {
        if (now.wall_ms < last.entry.header.wall_ms) flags |= seal::clock_flag::stepped_back;
        return false;
      });
  return clock_doubt(flags);
}

}  // namespace jambline::engine
