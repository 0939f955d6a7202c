// When a car of the floor will be ready: calendars, holds, what was learned, and whether the chance
// that is said is the share that comes true (self-consistency on simulated cars; no outside
// source).
#include "folds/forecast.h"

#include <cmath>
#include <cstdio>
#include <gtest/gtest.h>
#include <numbers>

#include "base/random.h"
#include "base/spans.h"

namespace jambline::folds {
namespace {

using job::Stage;

// Monday 2026-09-21 12:00 UTC is 8 in New York.
constexpr std::int64_t monday_8_ms = 1'789'992'000'000;

ShopView new_york() {
  ShopView shop;
  shop.zone = "America/New_York";
  shop.calendar = job::usual_calendar();
  return shop;
}

FloorRow car(std::vector<std::pair<Stage, int>> work) {
  FloorRow row;
  row.plate = "K 1";
  for (const auto& [stage, minutes] : work) {
    OperationView operation;
    operation.operation.bytes[0] = static_cast<std::uint8_t>(row.operations.size() + 1);
    operation.stage = stage;
    operation.estimate_min = minutes;
    row.operations.push_back(operation);
  }
  return row;
}

TEST(Forecast, WorkThatPassesTheEveningGoesOnInTheMorning) {
  // Likely 0.95 of 600 min: 570 min, nine hours of Monday and half an hour of Tuesday.
  const auto forecast =
      forecast_of(car({{Stage::Correct, 600}}), new_york(), LearnedDurations(), monday_8_ms, 0);
  ASSERT_TRUE(forecast);
  EXPECT_EQ(*forecast->likely_ms, monday_8_ms + 24 * hour_ms + hour_ms / 2);
}

TEST(Forecast, AHolidayIsSkippedAlsoWhenItCoversThePromise) {
  ShopView shop = new_york();
  shop.calendar.holidays = {20'718};  // 2026-09-22, counted by hand from 2026-01-01 = 20,454
  FloorRow row = car({{Stage::Correct, 600}});
  row.promised_ms = monday_8_ms + 30 * hour_ms;
  const auto forecast = forecast_of(row, shop, LearnedDurations(), monday_8_ms, 500);
  ASSERT_TRUE(forecast);
  EXPECT_EQ(*forecast->likely_ms, monday_8_ms + 48 * hour_ms + hour_ms / 2);
  EXPECT_LT(*forecast->promise_percent, 30);
  EXPECT_LT(*forecast->slack_ms, 0);
}

TEST(Forecast, GlassGoesOnBesideAssembling) {
  const auto beside = forecast_of(car({{Stage::Assemble, 100}, {Stage::Glass, 100}}), new_york(),
                                  LearnedDurations(), monday_8_ms, 0);
  const auto after = forecast_of(car({{Stage::Assemble, 100}, {Stage::Fit, 100}}), new_york(),
                                 LearnedDurations(), monday_8_ms, 0);
  ASSERT_TRUE(beside && after);
  EXPECT_EQ(*beside->likely_ms, monday_8_ms + 95 * 60'000);
  EXPECT_EQ(*after->likely_ms, monday_8_ms + 190 * 60'000);
}

TEST(Forecast, AHoldWithADateIsWaitedForAndOneWithoutGivesNoChance) {
  FloorRow row = car({{Stage::Correct, 60}, {Stage::Assemble, 60}});
  row.promised_ms = monday_8_ms + 100 * hour_ms;
  row.holds = {{job::WaitReason::Part, "lamp", Stage::Assemble, monday_8_ms + 26 * hour_ms}};
  auto forecast = forecast_of(row, new_york(), LearnedDurations(), monday_8_ms, 200);
  ASSERT_TRUE(forecast);
  EXPECT_EQ(*forecast->likely_ms, monday_8_ms + 26 * hour_ms + 57 * 60'000);
  ASSERT_TRUE(forecast->held_by);
  EXPECT_EQ(forecast->held_by->name, "lamp");
  row.holds.front().until_ms.reset();
  forecast = forecast_of(row, new_york(), LearnedDurations(), monday_8_ms, 200);
  ASSERT_TRUE(forecast);
  EXPECT_FALSE(forecast->promise_percent);
  EXPECT_FALSE(forecast->likely_ms);
  EXPECT_EQ(forecast->held_by->name, "lamp");
}

TEST(Forecast, ADateThatHasPassedSaysNoMoreThanNone) {
  FloorRow row = car({{Stage::Correct, 60}, {Stage::Assemble, 60}});
  row.promised_ms = monday_8_ms + 100 * hour_ms;
  row.holds = {{job::WaitReason::Part, "lamp", Stage::Assemble, monday_8_ms - hour_ms}};
  auto forecast = forecast_of(row, new_york(), LearnedDurations(), monday_8_ms, 200);
  ASSERT_TRUE(forecast);
  EXPECT_FALSE(forecast->promise_percent);
  EXPECT_EQ(forecast->held_by->name, "lamp");
  EXPECT_EQ(forecast->next, std::vector{Stage::Correct});
  row.operations.front().done = true;
  forecast = forecast_of(row, new_york(), LearnedDurations(), monday_8_ms, 200);
  ASSERT_TRUE(forecast);
  EXPECT_TRUE(forecast->next.empty()) << "what is held cannot be begun";
}

// By hand, on the usual calendar: nine hours of work end on Monday at 17, ten on Tuesday at 9.
TEST(Forecast, WhatHoldsACarIsFoundOnTheCalendarNotByMinutes) {
  const int nine_h_min = 568;  // 0.95 of it: 540 min
  FloorRow row = car({{Stage::Correct, nine_h_min}, {Stage::Assemble, 60}});
  row.holds = {{job::WaitReason::Part, "lamp", Stage::Assemble, monday_8_ms + 8 * hour_ms}};
  auto forecast = forecast_of(row, new_york(), LearnedDurations(), monday_8_ms, 0);
  ASSERT_TRUE(forecast);
  EXPECT_FALSE(forecast->held_by);
  EXPECT_EQ(forecast->held_by_stage, Stage::Correct);
  // 24 hours of waiting are more minutes than ten of work, and are over sooner.
  row = car({{Stage::Correct, nine_h_min + 63}, {Stage::Assemble, 60}});
  row.holds = {{job::WaitReason::Part, "lamp", Stage::Assemble, monday_8_ms + 24 * hour_ms}};
  forecast = forecast_of(row, new_york(), LearnedDurations(), monday_8_ms, 0);
  ASSERT_TRUE(forecast);
  EXPECT_FALSE(forecast->held_by);
  EXPECT_EQ(forecast->held_by_stage, Stage::Correct);
}

TEST(Forecast, WorkThatTookLongerThanItEverDoesIsNotOver) {
  FloorRow row = car({{Stage::Correct, 60}});
  row.operations.front().clocked_ms = 3 * hour_ms;
  row.promised_ms = monday_8_ms + hour_ms / 12;  // in 5 minutes
  const auto forecast = forecast_of(row, new_york(), LearnedDurations(), monday_8_ms, 2000);
  ASSERT_TRUE(forecast);
  // 0, 0 and 15 minutes: 1 - (10/15)^2 are over in 5 (cumulative triangle; from memory).
  EXPECT_NEAR(*forecast->promise_percent, 55.6, 4);
}

TEST(Forecast, NoWorkLeftIsSaid) {
  const auto nothing = forecast_of(car({}), new_york(), LearnedDurations(), monday_8_ms);
  ASSERT_FALSE(nothing);
  EXPECT_EQ(nothing.error().code, Code::AlreadyDone);
}

TEST(LearnedDurations, UnderTenCarsNothingIsUsed) {
  LearnedDurations learned;
  Lesson lesson;
  lesson.durations = {{Stage::Correct, 60, 120}};
  for (int i = 0; i < 9; ++i) learned.add(lesson);
  EXPECT_EQ(learned.spread_of(Stage::Correct).likely, usual_spread.likely);
  EXPECT_EQ(learned.cars_of(Stage::Correct), 0);
  learned.add(lesson);
  EXPECT_NEAR(learned.spread_of(Stage::Correct).likely, 2, 1e-9);
  EXPECT_EQ(learned.cars_of(Stage::Correct), 10);
}

// The triangle has the mean and the standard deviation that were seen (moments of a triangular
// distribution; from memory).
TEST(LearnedDurations, TheTriangleHasTheMomentsThatWereSeen) {
  LearnedDurations learned;
  for (const double ratio : {0.8, 0.9, 1.0, 1.1, 1.2, 0.8, 0.9, 1.0, 1.1, 1.2, 1.3, 0.7}) {
    Lesson lesson;
    lesson.durations = {{Stage::Mask, 100, 100 * ratio}};
    learned.add(lesson);
  }
  const auto seen = learned.stages().front();
  const auto [a, c, b] = learned.spread_of(Stage::Mask);
  EXPECT_NEAR((a + b + c) / 3, seen.mean_ratio, 1e-6);
  EXPECT_NEAR((a * a + b * b + c * c - a * b - a * c - b * c) / 18, seen.sd_ratio * seen.sd_ratio,
              0.01 * seen.sd_ratio * seen.sd_ratio);
}

// Cars whose stages take log-normal times: 300 teach, 2,000 more are promised at random and
// forecast. Of those that were given about p percent, about p percent are in time.
TEST(Forecast, TheChanceThatIsSaidIsTheShareThatComesTrue) {
  SeededRandom random(2026);
  const auto normal = [&] {
    return std::sqrt(-2 * std::log(1 - random.unit())) *
           std::cos(2 * std::numbers::pi * random.unit());
  };
  const std::vector<std::pair<Stage, int>> work = {
      {Stage::Inspect, 40},   {Stage::Correct, 180}, {Stage::EdgesAndJambs, 45},
      {Stage::Assemble, 150}, {Stage::Fit, 60},      {Stage::WalkAround, 30}};
  const auto takes = [&](int minutes) { return minutes * std::exp(0.05 + 0.3 * normal()); };
  LearnedDurations learned;
  for (int i = 0; i < 300; ++i) {
    Lesson lesson;
    for (const auto& [stage, minutes] : work)
      lesson.durations.push_back({stage, minutes, takes(minutes)});
    learned.add(lesson);
  }
  ShopView shop = new_york();
  for (auto& day : shop.calendar.week) day = {0, 1440};
  struct Bin {
    int cars = 0;
    double said = 0;
    int in_time = 0;
  };
  std::vector<Bin> bins(10);
  for (int i = 0; i < 2000; ++i) {
    FloorRow row = car(work);
    double total_min = 0;
    for (const auto& [stage, minutes] : work) total_min += takes(minutes);
    row.promised_ms = monday_8_ms + static_cast<std::int64_t>((400 + 260 * random.unit()) * 60'000);
    const auto forecast = forecast_of(row, shop, learned, monday_8_ms, 400);
    ASSERT_TRUE(forecast && forecast->promise_percent);
    const double said = *forecast->promise_percent;
    Bin& bin = bins[std::min<std::size_t>(9, static_cast<std::size_t>(said / 10))];
    ++bin.cars;
    bin.said += said;
    bin.in_time += monday_8_ms + total_min * 60'000 <= static_cast<double>(*row.promised_ms);
  }
  double sum_w = 0, sum_x = 0, sum_y = 0, sum_xx = 0, sum_xy = 0;
  std::printf(
      "self-consistency on simulated cars, no outside source\n said %%   came true %%  cars\n");
  for (const auto& bin : bins) {
    if (bin.cars == 0) continue;
    const double x = bin.said / bin.cars;
    const double y = 100.0 * bin.in_time / bin.cars;
    std::printf("%6.1f  %10.1f  %6d\n", x, y, bin.cars);
    sum_w += bin.cars;
    sum_x += bin.cars * x;
    sum_y += bin.cars * y;
    sum_xx += bin.cars * x * x;
    sum_xy += bin.cars * x * y;
  }
  const double slope = (sum_xy - sum_x * sum_y / sum_w) / (sum_xx - sum_x * sum_x / sum_w);
  std::printf("figure reliability_slope %.3f ratio\n", slope);
  EXPECT_GT(slope, 0.9);
  EXPECT_LT(slope, 1.1);
}

}  // namespace
}  // namespace jambline::folds
