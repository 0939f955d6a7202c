#include "trade/control_chart.h"

#include <gtest/gtest.h>
#include <limits>

namespace jambline::trade {
namespace {

DirtChart chart_of(const std::vector<int>& marks, double area_m2 = 1) {
  DirtChart out;
  out.form = LimitForm::ThreeSigma;
  for (const int one : marks)
    out.jobs.push_back({static_cast<double>(out.jobs.size()), one, area_m2});
  return out;
}

std::vector<ChartSignal> signals(const DirtChart& chart) {
  std::vector<ChartSignal> out;
  const auto result = dirt_chart(chart);
  EXPECT_TRUE(result);
  if (result)
    for (const auto& point : result->points) out.push_back(point.signal);
  return out;
}

TEST(Chart, EightOnOneSideAreARunAndSevenAreNot) {
  // Mean 9: eight of 8, then eight of 10.
  std::vector<int> marks(8, 8);
  marks.insert(marks.end(), 8, 10);
  auto found = signals(chart_of(marks));
  for (std::size_t i = 0; i < 16; ++i)
    EXPECT_EQ(found[i], i == 7    ? ChartSignal::RunBelow
                        : i == 15 ? ChartSignal::RunAbove
                                  : ChartSignal::None)
        << i;
  marks = std::vector<int>(7, 8);
  marks.insert(marks.end(), 7, 10);
  for (const auto signal : signals(chart_of(marks))) EXPECT_EQ(signal, ChartSignal::None);
}

TEST(Chart, APointOnTheMeanEndsARun) {
  // Mean 9: four of 8, one of 9, four of 8, and as many of 10.
  const std::vector<int> marks{8, 8, 8, 8, 9, 8, 8, 8, 8, 10, 10, 10, 10, 9, 10, 10, 10, 10};
  for (const auto signal : signals(chart_of(marks))) EXPECT_EQ(signal, ChartSignal::None);
}

TEST(Chart, APointOnALimitIsNotBeyondIt) {
  // Mean 4, limits 10 and 0 (from -2).
  const std::vector<int> marks{10, 4, 2, 4, 2, 4, 2, 4, 4};
  for (const auto signal : signals(chart_of(marks))) EXPECT_EQ(signal, ChartSignal::None);
  const auto result = dirt_chart(chart_of(marks));
  EXPECT_DOUBLE_EQ(result->points[0].limits.high, 10);
  EXPECT_EQ(result->points[0].limits.low, 0);
}

TEST(Chart, EachJobHasLimitsOfItsOwnArea) {
  const auto small = rate_limits(4, 1, LimitForm::ThreeSigma);
  const auto large = rate_limits(4, 4, LimitForm::ThreeSigma);
  EXPECT_DOUBLE_EQ(small.high, 10);
  EXPECT_DOUBLE_EQ(large.high, 7);
  EXPECT_DOUBLE_EQ(large.low, 1);
}

TEST(Chart, ExactLimitsOfARareThing) {
  // Mean 0.1: P(2 or more) = 0.0047, P(3 or more) = 0.00015. Two is inside, three is not.
  const auto limits = rate_limits(0.1, 1, LimitForm::ExactPoisson);
  EXPECT_EQ(limits.high, 2);
  EXPECT_EQ(limits.low, 0);
}

TEST(Chart, AnEventSplitsTheChartAndIsCompared) {
  DirtChart chart = chart_of({10, 10, 30, 30}, 10);
  chart.events = {{2, "filters changed"}};
  const auto result = dirt_chart(chart);
  ASSERT_TRUE(result);
  EXPECT_DOUBLE_EQ(result->points[1].limits.center, 1);
  EXPECT_DOUBLE_EQ(result->points[2].limits.center, 3);  // the event's own day is after it
  EXPECT_EQ(result->points[1].segment, 0);
  EXPECT_EQ(result->points[2].segment, 1);
  ASSERT_EQ(result->effects.size(), 1U);
  const auto& effect = result->effects[0];
  EXPECT_EQ(effect.jobs_before, 2);
  EXPECT_EQ(effect.jobs_after, 2);
  EXPECT_DOUBLE_EQ(effect.ratio, 3);
  EXPECT_GT(effect.interval.low, 1);
  EXPECT_LT(effect.holm_chance, 0.001);
  EXPECT_EQ(effect.chance, effect.holm_chance);
}

TEST(Chart, TwoEventsAreHeldAgainstEachOther) {
  DirtChart chart = chart_of({10, 14, 9}, 5);
  chart.events = {{1, "one"}, {2, "other"}};
  const auto result = dirt_chart(chart);
  ASSERT_TRUE(result);
  ASSERT_EQ(result->effects.size(), 2U);
  for (const auto& effect : result->effects) EXPECT_GE(effect.holm_chance, effect.chance);
}

TEST(Chart, AnEventIsJudgedFromTenJobsOnEachSide) {
  DirtChart chart = chart_of(std::vector<int>(20, 4));
  chart.events = {{10, "new ceiling filters"}};
  EXPECT_TRUE(dirt_chart(chart)->effects[0].enough_jobs);
  chart.jobs.pop_back();
  EXPECT_FALSE(dirt_chart(chart)->effects[0].enough_jobs);
}

TEST(Chart, AnEventWithoutJobsOnASideIsNotCompared) {
  DirtChart chart = chart_of({3, 4, 5});
  chart.events = {{-5, "before all"}, {90, "after all"}};
  const auto result = dirt_chart(chart);
  ASSERT_TRUE(result);
  EXPECT_TRUE(result->effects.empty());
}

TEST(Chart, WhatCannotBeIsRefusedByName) {
  const auto field = [](const DirtChart& chart) {
    const auto result = dirt_chart(chart);
    return result ? std::string("taken") : result.error().subject;
  };
  EXPECT_EQ(field({}), "jobs");
  DirtChart chart = chart_of({1, 2, 3});
  chart.jobs[1].area_m2 = 0;
  EXPECT_EQ(field(chart), "jobs[1].area_m2");
  chart = chart_of({1, -2, 3});
  EXPECT_EQ(field(chart), "jobs[1].marks");
  chart = chart_of({1, 2, 3});
  chart.jobs[2].day = 0;
  EXPECT_EQ(field(chart), "jobs[2].day");
  chart.jobs[2].day = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(field(chart), "jobs[2].day");
  chart = chart_of({1, 2});
  chart.events = {{3, "b"}, {1, "a"}};
  EXPECT_EQ(field(chart), "events[1].day");
}

}  // namespace
}  // namespace jambline::trade
