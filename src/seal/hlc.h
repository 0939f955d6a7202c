// seal/hlc.h: hybrid logical clock, so that entries of several devices have one display order.
//
// Shape:  u64 = 48 bits of milliseconds since 1970 (high), 16 bits of counter (low); comparing two
//         as numbers is the order. It decides nothing but the order in which things are shown.
// Rule:   a reading more than 5 minutes ahead of this device's own wall clock is kept in its entry
//         and not taken over here, so that one wrong clock does not push all others forward.
// Source: Kulkarni, Demirbas, Madappa, Avva, Leone: Logical Physical Clocks, 2014, figure 5. The
//         bound, and that a full counter carries into the milliseconds, are our own.
#pragma once

#include <cstdint>
#include <optional>

namespace jambline::seal {

inline constexpr std::int64_t hlc_most_ahead_ms = 300'000;

struct Hlc {
  std::uint64_t ms{};  // below 2^48
  std::uint16_t counter{};

  std::uint64_t packed() const { return (ms << 16U) | counter; }
  static Hlc unpack(std::uint64_t packed) {
    return {packed >> 16U, static_cast<std::uint16_t>(packed & 0xFFFFU)};
  }
  friend auto operator<=>(const Hlc&, const Hlc&) = default;
};

// The reading of a new entry after `last` was this device's latest.
Hlc hlc_local(Hlc last, std::int64_t wall_ms);
// The same after `remote` was heard of.
Hlc hlc_receive(Hlc last, Hlc remote, std::int64_t wall_ms);
// False when `remote` is too far ahead to be taken over.
bool hlc_believable(Hlc remote, std::int64_t wall_ms);

}  // namespace jambline::seal
