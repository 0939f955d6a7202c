// trade/hours.h: from the taps on a clock to exact hours.
//
// In:      start, switch, pause and stop of any number of people, in any order.
// Order:   by (hlc, device, seq), never by wall clock. The same entry twice counts once.
// Meaning: a person has one clock. Start or switch while it runs ends what ran; start or switch on
//          what already runs changes nothing; pause and stop end it. From a start that finds
//          nothing running to the pause or stop that follows is a session.
// Length:  two acts of one boot: by the boot clock, which never jumps and goes on in suspend. Other
//          boot or device: by wall clock. An amended act counts as made at its amended time. Never
//          negative.
// Place:   a session lies on the calendar by the wall clock of its first act; when that is before
//          2020 (a device that woke up in 1970), by the first act of the same boot that is not. A
//          session that would lie on an earlier one of the same person moves behind it. So no two
//          intervals of a person overlap, and earlier ones never move.
// Doubt:   `clock_doubt` stands wherever the clocks disagree by more than 2 s, time ran backwards,
// a
//          session was moved or a year is not to be believed; `disagreement_ms` is wall minus boot
//          clock (or minus what was used instead). Doubt changes no number.
// Open:    what was never stopped stays open and is in no sum. `proposed_end_ms` is a question to a
//          person: the last time the person was seen; it is never applied here.
// Rounds:  nothing. round_neutral is for those who ask.
// Units:   UTC milliseconds since 1970. Pure; any thread.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "base/clock.h"
#include "base/error.h"
#include "base/ids.h"

namespace jambline::trade {

enum class ClockActKind : std::uint8_t { Start, Pause, Switch, Stop };

struct ClockAct {
  ClockActKind kind{};
  PersonId person{};
  OperationId operation{};  // of start and switch
  std::int64_t wall_ms{};
  std::uint64_t since_boot_ms{};
  BootId boot{};
  std::uint64_t hlc{};
  DeviceId device{};
  std::uint64_t seq{};
  Hash entry{};
  std::optional<std::int64_t> amended_wall_ms = {};
};

// The last thing a person did, of whatever kind, for the proposal.
struct LastSeen {
  PersonId person{};
  Moment at{};
};

enum class Measured : std::uint8_t { BootClock, WallClock, Amended };

struct ClockInterval {
  PersonId person{};
  OperationId operation{};
  std::int64_t start_ms{};
  std::optional<std::int64_t> end_ms = {};  // none: open
  Hash from{};
  Hash to{};  // none: open
  Measured measured = Measured::BootClock;
  bool clock_doubt = false;
  std::int64_t disagreement_ms{};
  std::optional<std::int64_t> proposed_end_ms = {};  // open only
  // What an open clock is read against.
  std::uint64_t start_since_boot_ms{};
  BootId start_boot{};
  bool start_amended = false;

  std::int64_t length_ms() const { return end_ms ? *end_ms - start_ms : 0; }
};

struct ClockProblem {
  enum class Kind : std::uint8_t {
    NothingRan,      // pause or stop without a clock that runs or is paused
    AlreadyRan,      // start on what already runs
    RanBackwards,    // the act lies before the one that it ends; counted as nothing
    VeryLong,        // over 16 h without an act between
    Moved,           // lay on an earlier session, so stands behind it
    YearUnbelieved,  // before 2020, and no other act of the boot to place it by
  };
  Kind kind{};
  PersonId person{};
  Hash entry{};
};

struct Hours {
  std::vector<ClockInterval> intervals;  // by person, then in order of the acts; none of length 0
  std::vector<ClockProblem> problems;
};

Hours count_hours(std::span<const ClockAct> acts, std::span<const LastSeen> last_seen = {});

// What an open interval shows at `now`; never negative.
std::int64_t running_ms(const ClockInterval& interval, const Moment& now);

// The time of each person and operation in each day. Days are UTC intervals [start, end) that do
// not overlap (base/zones.h makes them, 23 and 25 hours long ones too). What lies in none has day
// -1.
struct DaySpan {
  std::int64_t start_ms{};
  std::int64_t end_ms{};
};
struct HoursSum {
  PersonId person{};
  OperationId operation{};
  int day = 0;  // index into the days
  std::int64_t ms{};
  friend bool operator==(const HoursSum&, const HoursSum&) = default;
};
std::vector<HoursSum> sum_hours(std::span<const ClockInterval> intervals,
                                std::span<const DaySpan> days);

// To the nearest multiple of `step_min`, the same for early and late, up and down. An exact half
// goes to the even multiple, so that halves go up as often as down: by the quarter 7:30 min -> 0,
// 22:30 -> 30; by six minutes 8:33 -> 8:36, 8:39 -> 8:36. OutOfRange unless step_min is 1 to 60.
// Source: 29 CFR 785.48(b) wants rounding that averages out; the tie rule is ours.
Result<std::int64_t> round_neutral(std::int64_t ms, int step_min);

}  // namespace jambline::trade
