#include "seal/hlc.h"

#include <algorithm>

namespace jambline::seal {

namespace {
constexpr std::uint64_t last_ms = (1ULL << 48U) - 1;

std::uint64_t physical(std::int64_t wall_ms) {
  return std::min<std::uint64_t>(static_cast<std::uint64_t>(std::max<std::int64_t>(wall_ms, 0)),
                                 last_ms);
}
Hlc after(std::uint64_t ms, std::uint16_t counter) {
  if (counter < UINT16_MAX) return {ms, static_cast<std::uint16_t>(counter + 1)};
  return ms < last_ms ? Hlc{ms + 1, 0} : Hlc{ms, counter};
}
}  // namespace

Hlc hlc_local(Hlc last, std::int64_t wall_ms) {
  const std::uint64_t now = physical(wall_ms);
  return now > last.ms ? Hlc{now, 0} : after(last.ms, last.counter);
}

Hlc hlc_receive(Hlc last, Hlc remote, std::int64_t wall_ms) {
  return hlc_local(std::max(last, remote), wall_ms);
}

bool hlc_believable(Hlc remote, std::int64_t wall_ms) {
  return remote.ms <= physical(wall_ms) + static_cast<std::uint64_t>(hlc_most_ahead_ms);
}

}  // namespace jambline::seal
