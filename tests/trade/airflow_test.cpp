#include "trade/airflow.h"

#include <gtest/gtest.h>

namespace jambline::trade {
namespace {

TEST(Airflow, MeanAndScatterOfTwoReadings) {
  // Standard deviation 0.1 sqrt 2, of the mean 0.1, twice that 0.2.
  const auto out = compare_airflow({{0.4, 0.6}, 0.5, "maker", 0, 10});
  ASSERT_TRUE(out);
  EXPECT_NEAR(out->mean_m_s, 0.5, 1e-12);
  EXPECT_NEAR(out->low_m_s, 0.3, 1e-12);
  EXPECT_NEAR(out->high_m_s, 0.7, 1e-12);
  EXPECT_NEAR(*out->flow_m3_h, 18000, 1e-9);
  EXPECT_EQ(out->basis.find("wanted")->source, "maker");
}

TEST(Airflow, TooNearToCallBetweenOverAndUnder) {
  const auto word = [](double wanted) {
    return compare_airflow({{0.5}, wanted, "maker", 10, {}})->word;  // 0.45 to 0.55
  };
  EXPECT_EQ(word(0.44), AirflowWord::Over);
  EXPECT_EQ(word(0.46), AirflowWord::TooNearToCall);
  EXPECT_EQ(word(0.54), AirflowWord::TooNearToCall);
  EXPECT_EQ(word(0.56), AirflowWord::Under);
}

TEST(Airflow, WhatCannotBeIsRefusedByName) {
  EXPECT_EQ(compare_airflow({{}, 0.5, "", 5, {}}).error().arg("field"), "velocities_m_s");
  EXPECT_EQ(compare_airflow({{0.5, -0.1}, 0.5, "", 5, {}}).error().arg("field"),
            "velocities_m_s[1]");
  EXPECT_EQ(compare_airflow({{0.5}, 0, "", 5, {}}).error().arg("field"), "wanted_m_s");
  EXPECT_EQ(compare_airflow({{0.5}, 0.5, "", 5, 0}).error().arg("field"), "area_m2");
}

TEST(FilterTrend, AStraightRiseMeetsItsLimitOnOneDay) {
  const auto out = filter_due({{{0, 10}, {1, 12}, {2, 14}}, 20});
  ASSERT_TRUE(out);
  EXPECT_NEAR(out->rise_pa_d, 2, 1e-12);
  EXPECT_NEAR(*out->due_day, 5, 1e-12);
  EXPECT_NEAR(*out->due_early_day, 5, 1e-9);
  EXPECT_NEAR(*out->due_late_day, 5, 1e-9);
}

TEST(FilterTrend, ScatterOpensTheDayAndTooMuchLeavesItOpen) {
  const auto some = filter_due({{{0, 10}, {1, 12.3}, {2, 13.8}, {3, 16.2}}, 40});
  EXPECT_LT(*some->due_early_day, *some->due_day);
  EXPECT_GT(*some->due_late_day, *some->due_day);
  const auto wild = filter_due({{{0, 10}, {1, 30}, {2, 12}}, 40});
  EXPECT_TRUE(wild->due_day);
  EXPECT_FALSE(wild->due_late_day);
}

TEST(FilterTrend, WhatDoesNotRiseIsNeverDue) {
  EXPECT_FALSE(filter_due({{{0, 14}, {1, 12}, {2, 10}}, 20})->due_day);
  EXPECT_FALSE(filter_due({{{0, 14}, {1, 14}, {2, 14}}, 20})->due_day);
}

TEST(FilterTrend, TwoReadingsAndTwoOnOneDayAreRefused) {
  EXPECT_EQ(filter_due({{{0, 10}, {1, 12}}, 20}).error().arg("field"), "readings");
  EXPECT_EQ(filter_due({{{0, 10}, {1, 12}, {1, 13}}, 20}).error().arg("field"), "readings[2].day");
}

TEST(Dilution, ASmallerShareWantsMoreAir) {
  // 99 x 40 / 1 = 3,960 to the limit itself; ten times that to a tenth.
  EXPECT_NEAR(dilution_air({40, 1, 1})->air_ft3_gal, 3960, 1e-9);
  EXPECT_NEAR(dilution_air({40, 1, 0.1})->air_ft3_gal, 39600, 1e-9);
  EXPECT_EQ(dilution_air({40, 0, 1}).error().arg("field"), "lel_percent");
}

}  // namespace
}  // namespace jambline::trade
