#include "trade/protection.h"

#include <gtest/gtest.h>

namespace jambline::trade {
namespace {

MaximumUse half_mask() {
  return {10, FactorScheme::Us, 0.5, "ppm", "A", 2000, FactorScheme::Us, {}, {}};
}

TEST(MaximumUse, TheLeastOfThreeBounds) {
  MaximumUse in = half_mask();
  EXPECT_DOUBLE_EQ(maximum_use(in)->most, 5);
  EXPECT_EQ(maximum_use(in)->bound_by, "factor x limit");
  in.dangerous = 4;
  EXPECT_DOUBLE_EQ(maximum_use(in)->most, 4);
  EXPECT_EQ(maximum_use(in)->bound_by, "immediately dangerous");
  in.device_most = 3;
  EXPECT_DOUBLE_EQ(maximum_use(in)->most, 3);
  EXPECT_EQ(maximum_use(in)->bound_by, "device");
}

TEST(MaximumUse, OnlyAFactorOfTheTableClaimsTheTable) {
  MaximumUse in = half_mask();
  EXPECT_EQ(maximum_use(in)->basis.find("assigned protection factor")->source,
            "29 CFR 1910.134 table 1, 2006");
  in.assigned_factor = 37;
  EXPECT_NE(maximum_use(in)->basis.find("assigned protection factor")->source,
            "29 CFR 1910.134 table 1, 2006");
}

TEST(MaximumUse, SchemesOfTwoCountriesAreNotMixed) {
  MaximumUse in = half_mask();
  in.limit_scheme = FactorScheme::Uk;
  const auto out = maximum_use(in);
  ASSERT_FALSE(out);
  EXPECT_EQ(out.error().arg("field"), "factor_scheme");
}

TEST(FitTest, OnTheMarkPassesAndOneBadExercisePullsAllDown) {
  EXPECT_TRUE(fit_test({{100, 100}, Facepiece::Half, 0, 365})->passes);
  EXPECT_FALSE(fit_test({{100, 99.9}, Facepiece::Half, 0, 365})->passes);
  const auto leak = fit_test({{10000, 10000, 10}, Facepiece::Half, 0, 365});
  EXPECT_NEAR(leak->overall_factor, 3 / (0.1 + 0.0002), 1e-9);
  EXPECT_FALSE(leak->passes);
}

TEST(FitTest, IsInDateOnItsLastDayAndNotOnTheNext) {
  EXPECT_TRUE(fit_test({{600}, Facepiece::Full, 365, 365})->in_date);
  const auto late = fit_test({{600}, Facepiece::Full, 366, 365});
  EXPECT_FALSE(late->in_date);
  EXPECT_DOUBLE_EQ(late->due_in_days, -1);
}

TEST(FitTest, WhatCannotBeIsRefusedByName) {
  EXPECT_EQ(fit_test({{}, Facepiece::Half, 0, 365}).error().arg("field"), "exercise_factors");
  EXPECT_EQ(fit_test({{500, 0}, Facepiece::Half, 0, 365}).error().arg("field"),
            "exercise_factors[1]");
  EXPECT_EQ(fit_test({{500}, Facepiece::Half, -1, 365}).error().arg("field"), "age_days");
}

TEST(Cartridge, IsChangedWhenNothingIsLeft) {
  EXPECT_FALSE(cartridge_left({8, "maker, 2024", {3, 4.5}})->change);
  EXPECT_TRUE(cartridge_left({8, "maker, 2024", {3, 5}})->change);
  EXPECT_DOUBLE_EQ(cartridge_left({8, "maker, 2024", {3, 6}})->left_h, -1);
  EXPECT_EQ(cartridge_left({8, "", {}}).error().arg("field"), "schedule_basis");
}

}  // namespace
}  // namespace jambline::trade
