#include "trade/hours.h"

#include <gtest/gtest.h>

namespace jambline::trade {
namespace {

constexpr std::int64_t minute = 60'000;
constexpr std::int64_t hour = 60 * minute;
constexpr std::int64_t nine = 1'780'000'000'000;  // some morning

template <class Name>
Name named(std::uint8_t number) {
  Name name;
  name.bytes[0] = number;
  return name;
}

const PersonId ivo = named<PersonId>(1);
const PersonId mara = named<PersonId>(2);
const OperationId inspect = named<OperationId>(1);
const OperationId correct = named<OperationId>(2);

// Acts of one device, taken one after the other by clocks that a test turns.
class Taps {
 public:
  std::vector<ClockAct> acts;
  std::int64_t wall_ms = nine;
  std::uint64_t since_boot_ms = 5 * hour;
  std::uint8_t boot = 1;
  std::uint8_t device = 1;

  Taps& pass(std::int64_t ms) {
    wall_ms += ms;
    since_boot_ms += static_cast<std::uint64_t>(ms);
    return *this;
  }
  Taps& set_wall(std::int64_t ms) {
    wall_ms = ms;
    return *this;
  }
  Taps& reboot(std::int64_t off_ms, std::uint64_t up_ms = 20'000) {
    wall_ms += off_ms + static_cast<std::int64_t>(up_ms);
    since_boot_ms = up_ms;
    ++boot;
    return *this;
  }
  Taps& tap(ClockActKind kind, OperationId operation = {}, PersonId person = ivo) {
    ClockAct act;
    act.kind = kind;
    act.person = person;
    act.operation = operation;
    act.wall_ms = wall_ms;
    act.since_boot_ms = since_boot_ms;
    act.boot = named<BootId>(boot);
    act.device = named<DeviceId>(device);
    act.seq = acts.size() + 1;
    act.hlc = acts.size() + 1;
    act.entry = named<Hash>(static_cast<std::uint8_t>(acts.size() + 1));
    acts.push_back(act);
    return *this;
  }
  Taps& start(OperationId operation) { return tap(ClockActKind::Start, operation); }
  Taps& change(OperationId operation) { return tap(ClockActKind::Switch, operation); }
  Taps& pause() { return tap(ClockActKind::Pause); }
  Taps& stop() { return tap(ClockActKind::Stop); }
  Taps& amended(std::int64_t ms) {
    acts.back().amended_wall_ms = ms;
    return *this;
  }
  Hours count() const { return count_hours(acts); }
};

bool has(const Hours& hours, ClockProblem::Kind kind) {
  for (const auto& problem : hours.problems)
    if (problem.kind == kind) return true;
  return false;
}

TEST(Hours, StartSwitchPauseStopGiveExactIntervals) {
  const Hours hours = Taps()
                          .start(inspect)
                          .pass(7 * minute + 1)
                          .change(correct)
                          .pass(30 * minute)
                          .pause()
                          .pass(15 * minute)
                          .start(correct)
                          .pass(hour)
                          .stop()
                          .count();
  ASSERT_EQ(hours.intervals.size(), 3U);
  EXPECT_EQ(hours.intervals[0].operation, inspect);
  EXPECT_EQ(hours.intervals[0].start_ms, nine);
  EXPECT_EQ(hours.intervals[0].length_ms(), 7 * minute + 1);
  EXPECT_EQ(hours.intervals[0].from, named<Hash>(1));
  EXPECT_EQ(hours.intervals[0].to, named<Hash>(2));
  EXPECT_EQ(hours.intervals[1].start_ms, *hours.intervals[0].end_ms);
  EXPECT_EQ(hours.intervals[1].length_ms(), 30 * minute);
  EXPECT_EQ(hours.intervals[2].length_ms(), hour);
  EXPECT_EQ(hours.intervals[2].measured, Measured::BootClock);
  EXPECT_FALSE(hours.intervals[2].clock_doubt);
  EXPECT_TRUE(hours.problems.empty());
}

TEST(Hours, OrderComesFromTheLogAndNotFromTheInputOrTheWallClock) {
  Taps taps;
  taps.start(inspect).pass(hour).stop().pass(minute).start(correct).pass(hour).stop();
  const Hours forward = taps.count();
  std::reverse(taps.acts.begin(), taps.acts.end());
  taps.acts.push_back(taps.acts.front());  // the same entry twice
  const Hours backward = taps.count();
  ASSERT_EQ(backward.intervals.size(), 2U);
  EXPECT_EQ(backward.intervals[0].start_ms, forward.intervals[0].start_ms);
  EXPECT_EQ(backward.intervals[1].length_ms(), hour);
  EXPECT_TRUE(backward.problems.empty());
}

TEST(Hours, TheBootClockCountsWhenTheWallClockIsSet) {
  Taps back;
  back.start(inspect).pass(hour).set_wall(nine - 2 * hour).stop();
  const Hours hours = back.count();
  ASSERT_EQ(hours.intervals.size(), 1U);
  EXPECT_EQ(hours.intervals[0].length_ms(), hour);
  EXPECT_TRUE(hours.intervals[0].clock_doubt);
  EXPECT_EQ(hours.intervals[0].disagreement_ms, -3 * hour);

  Taps ahead;
  ahead.start(inspect).pass(hour).set_wall(nine + 400LL * 24 * hour).stop();
  const Hours huge = ahead.count();
  EXPECT_EQ(huge.intervals[0].length_ms(), hour);
  EXPECT_EQ(huge.intervals[0].disagreement_ms, 400LL * 24 * hour - hour);
}

TEST(Hours, TwoSecondsOfDriftAreNoDoubt) {
  Taps taps;
  taps.start(inspect).pass(hour).set_wall(nine + hour + 2'000).stop();
  EXPECT_FALSE(taps.count().intervals[0].clock_doubt);
  Taps more;
  more.start(inspect).pass(hour).set_wall(nine + hour + 2'001).stop();
  EXPECT_TRUE(more.count().intervals[0].clock_doubt);
}

// CLOCK_BOOTTIME goes on in suspend: three hours asleep are three hours.
TEST(Hours, SuspendIsCounted) {
  const Hours hours = Taps().start(inspect).pass(3 * hour).stop().count();
  EXPECT_EQ(hours.intervals[0].length_ms(), 3 * hour);
  EXPECT_FALSE(hours.intervals[0].clock_doubt);
}

TEST(Hours, ADeviceThatWokeUpIn1970IsPlacedByItsLaterActs) {
  Taps taps;
  taps.set_wall(12'000).start(inspect).pass(10 * minute).change(correct);
  taps.pass(20 * minute).set_wall(nine).stop();
  const Hours hours = taps.count();
  ASSERT_EQ(hours.intervals.size(), 2U);
  EXPECT_EQ(hours.intervals[0].start_ms, nine - 30 * minute);
  EXPECT_EQ(hours.intervals[0].length_ms(), 10 * minute);
  EXPECT_EQ(*hours.intervals[1].end_ms, nine);
  EXPECT_TRUE(hours.intervals[1].clock_doubt);
  EXPECT_FALSE(has(hours, ClockProblem::Kind::YearUnbelieved));

  const Hours lost = Taps().set_wall(12'000).start(inspect).pass(minute).stop().count();
  EXPECT_EQ(lost.intervals[0].length_ms(), minute);
  EXPECT_TRUE(lost.intervals[0].clock_doubt);
  EXPECT_TRUE(has(lost, ClockProblem::Kind::YearUnbelieved));
}

TEST(Hours, ARebootBetweenIsMeasuredByTheWallClock) {
  const Hours hours =
      Taps().start(inspect).pass(hour).reboot(5 * minute).pass(minute).stop().count();
  ASSERT_EQ(hours.intervals.size(), 1U);
  EXPECT_EQ(hours.intervals[0].length_ms(), hour + 6 * minute + 20'000);
  EXPECT_EQ(hours.intervals[0].measured, Measured::WallClock);
  EXPECT_FALSE(hours.intervals[0].clock_doubt);
}

TEST(Hours, AfterARebootTheAgeOfTheBootContradictsAWallClockThatIsTooEarly) {
  Taps taps;
  taps.start(inspect).reboot(0, 2 * hour).set_wall(nine + hour).stop();
  const Hours hours = taps.count();
  EXPECT_EQ(hours.intervals[0].length_ms(), hour);
  EXPECT_TRUE(hours.intervals[0].clock_doubt);
  EXPECT_EQ(hours.intervals[0].disagreement_ms, -hour);
}

TEST(Hours, TimeThatRunsBackwardsCountsNothingAndIsReported) {
  Taps taps;
  taps.start(inspect).reboot(0).set_wall(nine - hour).stop();
  const Hours hours = taps.count();
  EXPECT_TRUE(hours.intervals.empty());
  EXPECT_TRUE(has(hours, ClockProblem::Kind::RanBackwards));
}

TEST(Hours, AnActOnAnotherDeviceIsMeasuredByTheWallClock) {
  Taps taps;
  taps.start(inspect).pass(hour);
  taps.device = 2;
  taps.boot = 9;
  taps.since_boot_ms = 400 * static_cast<std::uint64_t>(hour);
  taps.stop();
  const Hours hours = taps.count();
  EXPECT_EQ(hours.intervals[0].length_ms(), hour);
  EXPECT_EQ(hours.intervals[0].measured, Measured::WallClock);
  EXPECT_FALSE(hours.intervals[0].clock_doubt);
}

TEST(Hours, StopAndPauseWithoutAStartAreReported) {
  const Hours hours = Taps().stop().pause().start(inspect).pass(hour).pause().stop().stop().count();
  EXPECT_EQ(hours.intervals.size(), 1U);
  ASSERT_EQ(hours.problems.size(), 3U);
  EXPECT_EQ(hours.problems[0].entry, named<Hash>(1));
  EXPECT_EQ(hours.problems[1].entry, named<Hash>(2));
  EXPECT_EQ(hours.problems[2].entry, named<Hash>(6));  // the second stop; the first ended the pause
}

TEST(Hours, StartingWhatRunsChangesNothing) {
  const Hours hours = Taps().start(inspect).pass(minute).start(inspect).pass(minute).stop().count();
  ASSERT_EQ(hours.intervals.size(), 1U);
  EXPECT_EQ(hours.intervals[0].length_ms(), 2 * minute);
  EXPECT_TRUE(has(hours, ClockProblem::Kind::AlreadyRan));
}

TEST(Hours, AStartElsewhereEndsWhatRan) {
  const Hours hours = Taps().start(inspect).pass(minute).start(correct).pass(minute).stop().count();
  ASSERT_EQ(hours.intervals.size(), 2U);
  EXPECT_EQ(*hours.intervals[0].end_ms, hours.intervals[1].start_ms);
}

TEST(Hours, ACrashLeavesTheClockOpenWithAProposalThatIsNotApplied) {
  Taps taps;
  taps.start(inspect).pass(40 * minute);
  const LastSeen seen{ivo, {taps.wall_ms, taps.since_boot_ms, named<BootId>(taps.boot), 0}};
  const Hours hours = count_hours(taps.acts, std::vector{seen});
  ASSERT_EQ(hours.intervals.size(), 1U);
  EXPECT_FALSE(hours.intervals[0].end_ms);
  EXPECT_EQ(hours.intervals[0].proposed_end_ms, nine + 40 * minute);
  EXPECT_EQ(hours.intervals[0].length_ms(), 0);
  EXPECT_TRUE(sum_hours(hours.intervals, std::vector<DaySpan>{{0, nine + 24 * hour}}).empty());
  EXPECT_FALSE(taps.count().intervals[0].proposed_end_ms);
}

TEST(Hours, ARunningClockIsReadByTheBootClockAndAfterARebootByTheWall) {
  const Hours hours = Taps().start(inspect).count();
  const ClockInterval& open = hours.intervals.front();
  const auto up = static_cast<std::uint64_t>(6 * hour);
  EXPECT_EQ(running_ms(open, {nine - 9 * hour, up, named<BootId>(1), 0}), hour);
  EXPECT_EQ(running_ms(open, {nine + 2 * hour, 5'000, named<BootId>(2), 0}), 2 * hour);
  EXPECT_EQ(running_ms(open, {nine - 2 * hour, 5'000, named<BootId>(2), 0}), 0);
}

TEST(Hours, AnAmendedStopCountsFromTheAmendedTime) {
  const Hours hours = Taps().start(inspect).pass(14 * hour).stop().amended(nine + 8 * hour).count();
  ASSERT_EQ(hours.intervals.size(), 1U);
  EXPECT_EQ(hours.intervals[0].length_ms(), 8 * hour);
  EXPECT_EQ(hours.intervals[0].measured, Measured::Amended);
}

TEST(Hours, AnAmendedSwitchMovesTheBorderAndKeepsTheWhole) {
  const Hours hours = Taps()
                          .start(inspect)
                          .pass(3 * hour)
                          .change(correct)
                          .amended(nine + hour)
                          .pass(hour)
                          .stop()
                          .count();
  ASSERT_EQ(hours.intervals.size(), 2U);
  EXPECT_EQ(hours.intervals[0].length_ms(), hour);
  EXPECT_EQ(hours.intervals[1].length_ms(), 3 * hour);
}

TEST(Hours, AnAmendedStartCountsTheEarlierTime) {
  Taps taps;
  taps.start(inspect).amended(nine - hour).pass(hour).change(correct).pass(hour).stop();
  const Hours hours = taps.count();
  ASSERT_EQ(hours.intervals.size(), 2U);
  EXPECT_EQ(hours.intervals[0].start_ms, nine - hour);
  EXPECT_EQ(hours.intervals[0].length_ms(), 2 * hour);
  EXPECT_EQ(hours.intervals[1].length_ms(), hour);
  EXPECT_EQ(hours.intervals[1].measured, Measured::BootClock);
}

TEST(Hours, ASessionThatWouldLieOnAnEarlierOneMovesBehindIt) {
  Taps taps;
  taps.start(inspect).pass(2 * hour).stop().pass(minute);
  taps.set_wall(nine + hour).start(correct).pass(hour).stop();
  const Hours hours = taps.count();
  ASSERT_EQ(hours.intervals.size(), 2U);
  EXPECT_EQ(hours.intervals[0].start_ms, nine);
  EXPECT_EQ(hours.intervals[1].start_ms, nine + 2 * hour);
  EXPECT_EQ(hours.intervals[1].length_ms(), hour);
  EXPECT_TRUE(hours.intervals[1].clock_doubt);
  EXPECT_TRUE(has(hours, ClockProblem::Kind::Moved));
}

TEST(Hours, AClockThatOnceStoodAYearAheadPushesNothingBehindItself) {
  Taps taps;
  taps.set_wall(nine + 366LL * 24 * hour).start(inspect).pass(hour).stop();
  taps.set_wall(nine).start(correct).pass(hour).stop();
  const Hours hours = taps.count();
  EXPECT_EQ(hours.intervals[1].start_ms, nine);
  EXPECT_FALSE(has(hours, ClockProblem::Kind::Moved));
}

TEST(Hours, MoreThanSixteenHoursWithoutAnActAreAskedAbout) {
  EXPECT_TRUE(
      has(Taps().start(inspect).pass(17 * hour).stop().count(), ClockProblem::Kind::VeryLong));
  EXPECT_FALSE(
      has(Taps().start(inspect).pass(16 * hour).stop().count(), ClockProblem::Kind::VeryLong));
}

TEST(Hours, TwoPeopleOnOneOperationHaveTwoClocks) {
  Taps taps;
  taps.start(inspect).tap(ClockActKind::Start, inspect, mara).pass(hour).stop();
  taps.pass(hour).tap(ClockActKind::Stop, {}, mara);
  const auto sums =
      sum_hours(taps.count().intervals, std::vector<DaySpan>{{nine, nine + 24 * hour}});
  EXPECT_EQ(sums, (std::vector<HoursSum>{{ivo, inspect, 0, hour}, {mara, inspect, 0, 2 * hour}}));
}

TEST(Hours, SumsSplitAtMidnightAndKeepWhatLiesOutside) {
  const Hours hours = Taps().start(inspect).pass(5 * hour).stop().count();
  const std::vector<DaySpan> days{{nine - hour, nine + hour}, {nine + hour, nine + 3 * hour}};
  EXPECT_EQ(sum_hours(hours.intervals, days), (std::vector<HoursSum>{{ivo, inspect, -1, 2 * hour},
                                                                     {ivo, inspect, 0, hour},
                                                                     {ivo, inspect, 1, 2 * hour}}));
}

TEST(Hours, NumbersFromAnotherDeviceCannotOverflow) {
  Taps taps;
  taps.start(inspect);
  taps.wall_ms = INT64_MIN;
  taps.since_boot_ms = UINT64_MAX;
  taps.change(correct);
  taps.wall_ms = INT64_MAX;
  taps.since_boot_ms = 0;
  taps.boot = 7;
  taps.stop().amended(INT64_MAX);
  for (const auto& interval : taps.count().intervals) EXPECT_GE(interval.length_ms(), 0);
}

// By six minutes 8:33 lies exactly between 8:30 and 8:36; our rule is the even multiple (86 x 6).
TEST(Hours, ExactHalvesGoToTheEvenMultiple) {
  EXPECT_EQ(*round_neutral(513 * minute, 6), 516 * minute);
  EXPECT_EQ(*round_neutral(519 * minute, 6), 516 * minute);
  EXPECT_EQ(*round_neutral(7 * minute + 30'000, 15), 0);
  EXPECT_EQ(*round_neutral(22 * minute + 30'000, 15), 30 * minute);
  EXPECT_EQ(*round_neutral(7 * minute + 30'001, 15), 15 * minute);
}

TEST(Hours, RoundingIsTheSameBelowZero) {
  for (std::int64_t ms = 0; ms < 2 * hour; ms += 10'000)
    for (const int step : {1, 5, 6, 15, 60})
      EXPECT_EQ(*round_neutral(-ms, step), -*round_neutral(ms, step)) << ms << ' ' << step;
}

TEST(Hours, AStepThatIsNoneIsRefused) {
  for (const int step : {0, -15, 61}) {
    const auto rounded = round_neutral(minute, step);
    ASSERT_FALSE(rounded);
    EXPECT_EQ(rounded.error().code, Code::OutOfRange);
    EXPECT_EQ(rounded.error().arg("field"), "step_min");
  }
}

}  // namespace
}  // namespace jambline::trade
