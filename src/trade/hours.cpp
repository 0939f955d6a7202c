#include "trade/hours.h"

#include <algorithm>
#include <cstdlib>
#include <limits>
#include <map>
#include <set>
#include <string>
#include <tuple>

namespace jambline::trade {

namespace {
constexpr std::int64_t tolerance_ms = 2'000;
constexpr std::int64_t very_long_ms = 16LL * 3'600'000;
constexpr std::int64_t first_believed_ms = 1'577'836'800'000;  // 2020-01-01 UTC

using Kind = ClockProblem::Kind;

bool begins(ClockActKind kind) {
  return kind == ClockActKind::Start || kind == ClockActKind::Switch;
}

// Entries come from other devices too, with any number in them: far below overflow, far above use.
constexpr std::int64_t most_wall_ms = 8'640'000'000'000'000;
constexpr std::int64_t most_span_ms = 4'000'000'000'000;

std::int64_t held(std::int64_t value, std::int64_t most) {
  return std::clamp(value, -most, most);
}

std::int64_t said_ms(const ClockAct& act) {
  return held(act.amended_wall_ms.value_or(act.wall_ms), most_wall_ms);
}

std::int64_t since_ms(std::uint64_t from, std::uint64_t to) {
  return held(static_cast<std::int64_t>(to - from), most_span_ms);
}

std::int64_t boot_span_ms(const ClockAct& from, const ClockAct& to) {
  return since_ms(from.since_boot_ms, to.since_boot_ms);
}

// A run of acts of one person without a pause; the last one ends it unless it is open.
struct Session {
  std::vector<ClockAct> acts;
  bool open = true;
};

class OnePerson {
 public:
  explicit OnePerson(Hours& out) : out_(out), first_(out.intervals.size()) {}

  void take(const ClockAct& act) {
    const bool running = !session_.acts.empty();
    if (begins(act.kind)) {
      if (running && session_.acts.back().operation == act.operation) {
        problem(Kind::AlreadyRan, act);
        return;
      }
      session_.acts.push_back(act);
      paused_ = false;
      return;
    }
    if (!running) {
      if (!(paused_ && act.kind == ClockActKind::Stop)) problem(Kind::NothingRan, act);
      if (act.kind == ClockActKind::Stop) paused_ = false;
      return;
    }
    session_.acts.push_back(act);
    session_.open = false;
    place();
    paused_ = act.kind == ClockActKind::Pause;
  }

  void finish(const LastSeen* seen) {
    if (session_.acts.empty()) return;
    place();
    if (seen == nullptr) return;
    ClockInterval& open = out_.intervals.back();
    const std::int64_t length_ms = running_ms(open, seen->at);
    if (length_ms > 0) open.proposed_end_ms = open.start_ms + length_ms;
  }

 private:
  void problem(Kind kind, const ClockAct& act) {
    out_.problems.push_back({kind, act.person, act.entry});
  }

  // Where the first act lies on the calendar.
  std::int64_t first_ms(bool& believed) const {
    const ClockAct& first = session_.acts.front();
    believed = said_ms(first) >= first_believed_ms;
    if (believed || first.amended_wall_ms) return said_ms(first);
    for (const ClockAct& act : session_.acts)
      if (!act.amended_wall_ms && act.boot == first.boot && act.wall_ms >= first_believed_ms &&
          act.since_boot_ms >= first.since_boot_ms) {
        believed = true;
        return said_ms(act) - boot_span_ms(first, act);
      }
    return said_ms(first);
  }

  ClockInterval begun(const ClockAct& act, std::int64_t start_ms) const {
    ClockInterval out;
    out.person = act.person;
    out.operation = act.operation;
    out.start_ms = start_ms;
    out.from = act.entry;
    out.start_since_boot_ms = act.since_boot_ms;
    out.start_boot = act.boot;
    out.start_amended = act.amended_wall_ms.has_value();
    return out;
  }

  // Ends `interval`, begun by `from`, at `to`.
  void end(ClockInterval& interval, const ClockAct& from, const ClockAct& to) {
    const std::int64_t wall_span_ms = said_ms(to) - said_ms(from);
    std::int64_t length_ms = wall_span_ms;
    interval.to = to.entry;
    interval.measured = Measured::WallClock;
    if (from.amended_wall_ms || to.amended_wall_ms) {
      interval.measured = Measured::Amended;
      // The amended act lies on the calendar, the other one where the session put it.
      length_ms = said_ms(to) - interval.start_ms;
      const auto anchor = anchors_.find(to.boot);
      if (!to.amended_wall_ms && anchor != anchors_.end())
        length_ms =
            anchor->second.place_ms + boot_span_ms(*anchor->second.act, to) - interval.start_ms;
    } else if (from.boot == to.boot) {
      interval.measured = Measured::BootClock;
      length_ms = boot_span_ms(from, to);
      if (std::llabs(wall_span_ms - length_ms) > tolerance_ms)
        doubt(interval, wall_span_ms - length_ms);
    } else if (from.device == to.device) {
      // The device started anew in between, so at least its present age has passed.
      const std::int64_t least_ms = since_ms(0, to.since_boot_ms);
      if (wall_span_ms < least_ms - tolerance_ms) doubt(interval, wall_span_ms - least_ms);
    }
    if (length_ms < 0) {
      problem(Kind::RanBackwards, to);
      if (!interval.clock_doubt) doubt(interval, length_ms);
      length_ms = 0;
    }
    length_ms = std::min(length_ms, most_span_ms);
    if (length_ms > very_long_ms) problem(Kind::VeryLong, to);
    interval.end_ms = interval.start_ms + length_ms;
  }

  static void doubt(ClockInterval& interval, std::int64_t disagreement_ms) {
    interval.clock_doubt = true;
    interval.disagreement_ms = disagreement_ms;
  }

  // How far a session must move back so as to lie on none before it.
  std::int64_t move_ms(const std::vector<ClockInterval>& session) const {
    std::int64_t moved_ms = 0;
    if (session.empty() || session.front().start_ms >= latest_end_ms_) return 0;
    for (bool again = true; again;) {
      again = false;
      for (const ClockInterval& one : session)
        for (std::size_t i = first_; i < out_.intervals.size(); ++i) {
          const ClockInterval& other = out_.intervals[i];
          const std::int64_t start_ms = one.start_ms + moved_ms;
          const std::int64_t end_ms = one.end_ms ? *one.end_ms + moved_ms : start_ms + 1;
          if (start_ms >= *other.end_ms || end_ms <= other.start_ms) continue;
          moved_ms += *other.end_ms - start_ms;
          again = true;
        }
    }
    return moved_ms;
  }

  void place() {
    bool believed = true;
    std::vector<ClockInterval> session;
    anchors_.clear();
    std::int64_t at_ms = first_ms(believed);
    if (!believed) problem(Kind::YearUnbelieved, session_.acts.front());
    for (std::size_t i = 0; i < session_.acts.size(); ++i) {
      const ClockAct& act = session_.acts[i];
      if (!act.amended_wall_ms) anchors_[act.boot] = {&act, at_ms};
      if (!begins(act.kind)) break;
      ClockInterval interval = begun(act, at_ms);
      if (!believed) doubt(interval, 0);
      if (i + 1 < session_.acts.size()) {
        end(interval, act, session_.acts[i + 1]);
        at_ms = *interval.end_ms;
      }
      session.push_back(interval);
    }
    std::erase_if(session, [](const ClockInterval& one) { return one.end_ms == one.start_ms; });
    const std::int64_t moved_ms = move_ms(session);
    if (moved_ms > 0) problem(Kind::Moved, session_.acts.front());
    for (ClockInterval& interval : session) {
      interval.start_ms += moved_ms;
      if (interval.end_ms) {
        *interval.end_ms += moved_ms;
        latest_end_ms_ = std::max(latest_end_ms_, *interval.end_ms);
      }
      if (moved_ms > 0 && !interval.clock_doubt) doubt(interval, -moved_ms);
      out_.intervals.push_back(interval);
    }
    session_ = {};
  }

  struct Anchor {
    const ClockAct* act = nullptr;
    std::int64_t place_ms{};
  };

  Hours& out_;
  std::size_t first_;
  std::int64_t latest_end_ms_ = std::numeric_limits<std::int64_t>::min();
  Session session_;
  bool paused_ = false;
  std::map<BootId, Anchor> anchors_;
};
}  // namespace

Hours count_hours(std::span<const ClockAct> acts, std::span<const LastSeen> last_seen) {
  std::map<PersonId, std::vector<ClockAct>> people;
  std::set<Hash> known;
  for (const ClockAct& act : acts)
    if (known.insert(act.entry).second) people[act.person].push_back(act);

  Hours out;
  for (auto& [person, own] : people) {
    std::stable_sort(own.begin(), own.end(), [](const ClockAct& a, const ClockAct& b) {
      return std::tie(a.hlc, a.device, a.seq) < std::tie(b.hlc, b.device, b.seq);
    });
    OnePerson one(out);
    for (const ClockAct& act : own) one.take(act);
    const LastSeen* seen = nullptr;
    for (const LastSeen& candidate : last_seen)
      if (candidate.person == person) seen = &candidate;
    one.finish(seen);
  }
  return out;
}

std::int64_t running_ms(const ClockInterval& interval, const Moment& now) {
  const bool same_boot = interval.start_boot == now.boot && !interval.start_amended;
  const std::int64_t ms = same_boot ? since_ms(interval.start_since_boot_ms, now.since_boot_ms)
                                    : held(now.wall_ms, most_wall_ms) - interval.start_ms;
  return std::max<std::int64_t>(ms, 0);
}

std::vector<HoursSum> sum_hours(std::span<const ClockInterval> intervals,
                                std::span<const DaySpan> days) {
  std::map<std::tuple<PersonId, OperationId, int>, std::int64_t> sums;
  for (const ClockInterval& interval : intervals) {
    std::int64_t left_ms = interval.length_ms();
    if (left_ms == 0) continue;
    for (std::size_t day = 0; day < days.size(); ++day) {
      const std::int64_t in_day_ms = std::min(*interval.end_ms, days[day].end_ms) -
                                     std::max(interval.start_ms, days[day].start_ms);
      if (in_day_ms <= 0) continue;
      sums[{interval.person, interval.operation, static_cast<int>(day)}] += in_day_ms;
      left_ms -= in_day_ms;
    }
    if (left_ms > 0) sums[{interval.person, interval.operation, -1}] += left_ms;
  }
  std::vector<HoursSum> out;
  out.reserve(sums.size());
  for (const auto& [key, ms] : sums)
    out.push_back({std::get<0>(key), std::get<1>(key), std::get<2>(key), ms});
  return out;
}

Result<std::int64_t> round_neutral(std::int64_t ms, int step_min) {
  if (step_min < 1 || step_min > 60)
    return fail(Error{
        Code::OutOfRange,
        "round",
        "step",
        {{"field", "step_min"}, {"value", std::to_string(step_min)}, {"min", "1"}, {"max", "60"}}});
  const std::int64_t step_ms = step_min * 60'000LL;
  std::int64_t steps = ms / step_ms;
  const std::int64_t rest_ms = std::llabs(ms % step_ms);
  const bool up = rest_ms * 2 > step_ms || (rest_ms * 2 == step_ms && steps % 2 != 0);
  if (up) steps += ms < 0 ? -1 : 1;
  return steps * step_ms;
}

}  // namespace jambline::trade
