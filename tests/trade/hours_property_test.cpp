// The count of hours against a second-by-second count: every second, ask what ran.
#include <gtest/gtest.h>
#include <map>
#include <rapidcheck/gtest.h>

#include "trade/hours.h"

namespace jambline::trade {
namespace {

constexpr std::int64_t begin_ms = 1'780'000'000'000;

struct Shop {
  std::vector<ClockAct> acts;
  std::map<std::tuple<int, int, int>, std::int64_t> seconds;  // person, operation, day
};

template <class Name>
Name named(int number) {
  Name name;
  name.bytes[0] = static_cast<std::uint8_t>(number);
  name.bytes[1] = static_cast<std::uint8_t>(number >> 8);
  return name;
}

// Three people tap on one device, whose wall clock may be set wrong between sessions' acts.
// `set_clock` false: the wall clock is true, and the device may be started anew at any time.
Shop simulate(bool set_clock, std::int64_t day_s) {
  Shop shop;
  std::map<int, int> running;  // person -> operation
  std::map<int, bool> paused;
  std::int64_t wall_error_ms = 0;
  std::uint64_t boot_at_s = 0;
  int boot = 1;
  std::int64_t now_s = 0;
  const int taps = *rc::gen::inRange(0, 60);
  for (int i = 0; i < taps; ++i) {
    const int wait_s = *rc::gen::inRange(1, 900);
    for (int second = 0; second < wait_s; ++second, ++now_s)
      for (const auto& [person, operation] : running)
        ++shop.seconds[{person, operation, static_cast<int>(now_s / day_s)}];
    if (!set_clock && *rc::gen::inRange(0, 6) == 0) {
      ++boot;
      boot_at_s = static_cast<std::uint64_t>(now_s);
    }
    if (set_clock && *rc::gen::inRange(0, 4) == 0)
      wall_error_ms = 1000LL * *rc::gen::inRange(-20'000, 20'000);

    ClockAct act;
    const int person = *rc::gen::inRange(1, 4);
    const int operation = *rc::gen::inRange(1, 4);
    act.kind = static_cast<ClockActKind>(*rc::gen::inRange(0, 4));
    act.person = named<PersonId>(person);
    act.operation = named<OperationId>(operation);
    act.wall_ms = begin_ms + now_s * 1000 + wall_error_ms;
    act.since_boot_ms = (static_cast<std::uint64_t>(now_s) - boot_at_s) * 1000;
    act.boot = named<BootId>(boot);
    act.seq = act.hlc = static_cast<std::uint64_t>(i) + 1;
    act.entry = named<Hash>(i + 1);
    shop.acts.push_back(act);
    if (act.kind == ClockActKind::Start || act.kind == ClockActKind::Switch)
      running[person] = operation;
    else
      running.erase(person);
  }
  // All go home.
  for (int person = 1; person < 4; ++person) {
    ClockAct act;
    act.kind = ClockActKind::Stop;
    act.person = named<PersonId>(person);
    act.wall_ms = begin_ms + now_s * 1000 + wall_error_ms;
    act.since_boot_ms = (static_cast<std::uint64_t>(now_s) - boot_at_s) * 1000;
    act.boot = named<BootId>(boot);
    act.seq = act.hlc = static_cast<std::uint64_t>(taps + person) + 1;
    act.entry = named<Hash>(taps + person + 1);
    shop.acts.push_back(act);
  }
  return shop;
}

void no_overlap(const Hours& hours) {
  for (const auto& a : hours.intervals)
    for (const auto& b : hours.intervals)
      if (&a != &b && a.person == b.person)
        RC_ASSERT(*a.end_ms <= b.start_ms || *b.end_ms <= a.start_ms);
}

RC_GTEST_PROP(HoursProperty, SumsPerPersonOperationAndDayAreTheSecondsCounted, ()) {
  const std::int64_t day_s = *rc::gen::inRange(1'000, 20'000);
  const Shop shop = simulate(false, day_s);
  const Hours hours = count_hours(shop.acts);
  no_overlap(hours);

  std::vector<DaySpan> days;
  for (std::int64_t day = 0; day < 60; ++day)
    days.push_back({begin_ms + day * day_s * 1000, begin_ms + (day + 1) * day_s * 1000});
  std::map<std::tuple<int, int, int>, std::int64_t> seconds;
  for (const auto& sum : sum_hours(hours.intervals, days))
    seconds[{sum.person.bytes[0], sum.operation.bytes[0], sum.day}] = sum.ms / 1000;
  RC_ASSERT(seconds == shop.seconds);
  for (const auto& interval : hours.intervals) RC_ASSERT(!interval.clock_doubt);
}

RC_GTEST_PROP(HoursProperty, AWrongWallClockChangesNoLengthAndMakesNoOverlap, ()) {
  const std::int64_t all_s = 1'000'000'000;
  const Shop shop = simulate(true, all_s);
  const Hours hours = count_hours(shop.acts);
  no_overlap(hours);
  std::map<std::tuple<int, int, int>, std::int64_t> seconds;
  for (const auto& interval : hours.intervals)
    seconds[{interval.person.bytes[0], interval.operation.bytes[0], 0}] +=
        interval.length_ms() / 1000;
  RC_ASSERT(seconds == shop.seconds);
}

RC_GTEST_PROP(HoursProperty, RoundingIsNeverMoreThanHalfAStepOff, ()) {
  const std::int64_t ms = *rc::gen::inRange<std::int64_t>(-1'000'000'000, 1'000'000'000);
  const int step_min = *rc::gen::inRange(1, 61);
  const std::int64_t rounded = *round_neutral(ms, step_min);
  RC_ASSERT(rounded % (step_min * 60'000LL) == 0);
  RC_ASSERT(std::llabs(rounded - ms) * 2 <= step_min * 60'000LL);
  RC_ASSERT(*round_neutral(rounded, step_min) == rounded);
}

}  // namespace
}  // namespace jambline::trade
