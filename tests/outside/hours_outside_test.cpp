#include <gtest/gtest.h>

#include "base/zones.h"
#include "tests/outside/table.h"
#include "trade/hours.h"

namespace jambline::trade {
namespace {

ClockAct act(ClockActKind kind, std::int64_t wall_ms, std::uint64_t seq) {
  ClockAct out;
  out.kind = kind;
  out.wall_ms = wall_ms;
  out.since_boot_ms = static_cast<std::uint64_t>(wall_ms - 1'700'000'000'000);
  out.seq = seq;
  out.hlc = seq;
  out.entry.bytes[0] = static_cast<std::uint8_t>(seq);
  return out;
}

TEST(HoursOutside, NightsOfTheClockChangeCountWhatTheyWere) {
  for (const auto& row : outside::table("shift_nights.csv")) {
    const std::string& zone = row.at("zone");
    const auto number = [&](const char* column) { return std::stoi(row.at(column)); };
    const LocalDate evening{number("year"), number("month"), number("day")};
    const LocalDate morning{number("year"), number("next_month"), number("next_day")};
    const auto begin = utc_of(zone, evening, 23 * 60);
    const auto end = utc_of(zone, morning, 7 * 60 + 30);
    ASSERT_TRUE(begin && end);
    const std::int64_t lunch = *begin + 4 * 3'600'000;

    const std::vector<ClockAct> acts{
        act(ClockActKind::Start, *begin, 1), act(ClockActKind::Pause, lunch, 2),
        act(ClockActKind::Start, lunch + 30 * 60'000, 3), act(ClockActKind::Stop, *end, 4)};
    const Hours hours = count_hours(acts);
    std::int64_t worked_ms = 0;
    for (const auto& interval : hours.intervals) worked_ms += interval.length_ms();
    EXPECT_EQ(worked_ms, std::stoll(row.at("worked_h")) * 3'600'000);
    EXPECT_EQ(static_cast<double>(*end - *begin) / 3'600'000, std::stod(row.at("elapsed_h")));
    EXPECT_TRUE(hours.problems.empty());

    const auto first = local_day(zone, evening);
    const auto second = local_day(zone, morning);
    ASSERT_TRUE(first && second);
    EXPECT_EQ(first->length_ms(), std::stoll(row.at("day_h")) * 3'600'000);
    EXPECT_EQ(second->length_ms(), std::stoll(row.at("next_day_h")) * 3'600'000);
    const std::vector<DaySpan> days{{first->start_ms, first->end_ms},
                                    {second->start_ms, second->end_ms}};
    const auto sums = sum_hours(hours.intervals, days);
    ASSERT_EQ(sums.size(), 2U);
    EXPECT_EQ(sums[0].ms, 3'600'000);
    EXPECT_EQ(sums[1].ms, worked_ms - 3'600'000);
  }
}

TEST(HoursOutside, RoundingGoesToTheNearestStep) {
  for (const auto& row : outside::table("clock_rounding.csv")) {
    const auto rounded =
        round_neutral(std::stoll(row.at("from_min")) * 60'000, std::stoi(row.at("step_min")));
    ASSERT_TRUE(rounded);
    EXPECT_EQ(*rounded / 60'000, std::stoll(row.at("to_min"))) << row.at("from_min");
  }
}

// Source: 29 CFR 785.48(b); over time the rounding must not under-pay. Over all seconds of ten
// hours it neither adds nor takes anything.
TEST(HoursOutside, RoundingAveragesOut) {
  for (const int step_min : {5, 6, 15}) {
    std::int64_t difference_ms = 0;
    const std::int64_t span_s = 36'000;
    for (std::int64_t second = 0; second < span_s; ++second)
      difference_ms += *round_neutral(second * 1000, step_min) - second * 1000;
    EXPECT_EQ(difference_ms, 0) << step_min;
  }
}

}  // namespace
}  // namespace jambline::trade
