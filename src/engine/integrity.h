// engine/integrity.h: what a log says of itself beside whether it is whole: clocks that jumped,
// work that is kept apart, work said again after a fork, what came late, what was erased, what is
// missing; and how far each device is proven, and to whom.
//
// Opens a reader of its own; any thread. Reads every entry once. What stands after the first entry
// that cannot be read is not looked at, and `stopped_at` says so.
// Late:    an entry whose hub received it more than `late_ms` after it was made, by their two
// clocks. Rows:    one after another of one device and of one kind are one finding; of each kind
// the first
//          `most_findings` are kept and all are counted.
// Errors:  those of EntryLog::open() and audit(); Stopped.
#pragma once

#include <array>
#include <filesystem>
#include <functional>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "base/spans.h"
#include "log/entry_log.h"

namespace jambline::engine {

enum class FindingKind : std::uint8_t {
  ClockBefore2025,
  ClockSteppedBack,
  ClockJumped,
  Forked,       // another copy of the folder had written: its work was said again
  TakenOver,    // work of a revoked device was said again
  Quarantined,  // after their device's cut: kept, and not obeyed
  Late,
  Erased,
  Gap,  // numbers of a device that are not here
};
inline constexpr std::size_t finding_kinds = 9;
inline constexpr std::size_t most_findings = 100;
inline constexpr std::int64_t late_ms = day_ms;

struct Finding {
  FindingKind kind{};
  DeviceId device;
  std::uint64_t seq_first{};
  std::uint64_t seq_last{};
  Hash entry;                    // the first of them; of a gap the one after it
  JobId job;                     // of the first; zero: the shop's own
  std::int64_t wall_ms{};        // when the first was made, by its device's clock
  std::int64_t received_ms{};    // Late: by the hub's clock
  std::optional<DeviceId> from;  // Forked, TakenOver: whose work it was
  std::uint64_t entries() const { return seq_last - seq_first + 1; }
  friend bool operator==(const Finding&, const Finding&) = default;
};

struct Proven {
  DeviceId device;
  std::string name;     // as it was admitted
  std::uint64_t seq{};  // up to here by the chain that is here
  struct ByHub {
    std::string hub;
    std::uint64_t seq{};
    std::int64_t received_ms{};
    friend bool operator==(const ByHub&, const ByHub&) = default;
  };
  std::optional<ByHub> hub;  // the receipt that reaches furthest; none: this device's word alone
  friend bool operator==(const Proven&, const Proven&) = default;
};

struct Integrity {
  log::Audit audit;
  std::vector<Proven> proven;                         // a row a device of audit.heads
  std::vector<Finding> findings;                      // by kind, then as they came
  std::array<std::uint64_t, finding_kinds> counts{};  // findings of each kind, all of them
  std::optional<Error> stopped_at;
  std::uint64_t count(FindingKind kind) const { return counts[static_cast<std::size_t>(kind)]; }
};

// `progress` goes from 0 to 1 over both readings.
Result<Integrity> check_integrity(const std::filesystem::path& folder, const std::stop_token& stop,
                                  const std::function<void(double part_done)>& progress);

}  // namespace jambline::engine
