#include "trade/clearance.h"

#include <cmath>
#include <gtest/gtest.h>

namespace jambline::trade {
namespace {

// 600 m3/h through 100 m3: six changes an hour.
Clearance booth() {
  Clearance out;
  out.volume_m3 = 100;
  out.exhaust_m3_h = 600;
  return out;
}
const double formula_min = std::log(1000) / 6 * 60 * 3;  // 99.9 %, mixing factor 3

TEST(Clearance, AMeasuredTestInDateGovernsEvenWhenShorter) {
  Clearance in = booth();
  in.smoke_test = SmokeTest{5, 100, 424};
  const auto out = clearance_time(in);
  EXPECT_EQ(out->rule, ClearanceRule::SmokeTest);
  EXPECT_DOUBLE_EQ(out->minutes, 5);
  EXPECT_FALSE(out->weaker);
  EXPECT_NEAR(out->basis.find("formula")->value, formula_min, 1e-9);  // shown, not used
}

TEST(Clearance, ATestIsInDateOnItsLastDay) {
  Clearance in = booth();
  in.smoke_test = SmokeTest{5, 424, 424};
  EXPECT_EQ(clearance_time(in)->rule, ClearanceRule::SmokeTest);
  in.smoke_test->age_days = 425;
  EXPECT_EQ(clearance_time(in)->rule, ClearanceRule::LongerOfBoth);
}

TEST(Clearance, OverdueIsTheLongerOfTestAndFormula) {
  Clearance in = booth();
  in.smoke_test = SmokeTest{5, 500, 424};
  EXPECT_NEAR(clearance_time(in)->minutes, formula_min, 1e-9);
  in.smoke_test->clear_min = 400;
  EXPECT_DOUBLE_EQ(clearance_time(in)->minutes, 400);
  EXPECT_TRUE(clearance_time(in)->weaker);
}

TEST(Clearance, WithoutATestTheFormulaIsTheWeakerBasis) {
  const auto out = clearance_time(booth());
  EXPECT_EQ(out->rule, ClearanceRule::Formula);
  EXPECT_NEAR(out->minutes, formula_min, 1e-9);
  EXPECT_TRUE(out->weaker);
}

TEST(Clearance, AnOpenDeckGetsNoFormula) {
  Clearance in = booth();
  in.place = SprayPlace::OpenDeck;
  const auto nothing = clearance_time(in);
  ASSERT_FALSE(nothing);
  EXPECT_EQ(nothing.error().arg("field"), "fixed_min");
  in.fixed_min = 30;
  const auto out = clearance_time(in);
  EXPECT_EQ(out->rule, ClearanceRule::FixedTime);
  EXPECT_DOUBLE_EQ(out->minutes, 30);
  EXPECT_EQ(out->basis.find("formula"), nullptr);
  in.smoke_test = SmokeTest{45, 500, 424};
  EXPECT_DOUBLE_EQ(clearance_time(in)->minutes, 45);
}

TEST(Clearance, TheShopsExtraFactorOnlyAddsTime) {
  Clearance in = booth();
  in.smoke_test = SmokeTest{5, 100, 424};
  in.extra_factor = 1.5;
  EXPECT_DOUBLE_EQ(clearance_time(in)->minutes, 7.5);
  EXPECT_EQ(clearance_time(in)->basis.find("the shop's extra factor")->source, entered);
  in.extra_factor = 0.9;
  EXPECT_EQ(clearance_time(in).error().arg("field"), "extra_factor");
}

TEST(Clearance, NothingToGoByIsRefused) {
  EXPECT_EQ(clearance_time({}).error().arg("field"), "smoke_test");
  Clearance in = booth();
  in.exhaust_m3_h = 0;
  EXPECT_EQ(clearance_time(in).error().arg("field"), "exhaust_m3_h");
}

ClearanceCount five_minutes(double now_s, std::vector<ExhaustChange> changes) {
  return {100, 5, now_s, std::move(changes)};
}
constexpr auto fresh = ExhaustEvent::FreshAirDoorsShut;

TEST(ClearanceCount, CountsFromGunDownOnFreshAir) {
  const auto half = clearance_count(five_minutes(250, {{fresh, 0}}));
  EXPECT_TRUE(half->counting);
  EXPECT_DOUBLE_EQ(half->left_s, 150);
  EXPECT_FALSE(clearance_count(five_minutes(399, {{fresh, 0}}))->over);
  const auto done = clearance_count(five_minutes(400, {{fresh, 0}}));
  EXPECT_TRUE(done->over);
  EXPECT_DOUBLE_EQ(done->left_s, 0);
}

TEST(ClearanceCount, WithoutFreshAirNothingCounts) {
  for (const auto event :
       {ExhaustEvent::Bake, ExhaustEvent::FanStopped, ExhaustEvent::DoorOpened}) {
    const auto out = clearance_count(five_minutes(5000, {{event, 0}}));
    EXPECT_FALSE(out->counting);
    EXPECT_FALSE(out->over);
    EXPECT_DOUBLE_EQ(out->left_s, 300);
  }
  EXPECT_FALSE(clearance_count(five_minutes(5000, {}))->over);
}

TEST(ClearanceCount, BakeFanAndDoorStartItAnewInFull) {
  for (const auto event :
       {ExhaustEvent::Bake, ExhaustEvent::FanStopped, ExhaustEvent::DoorOpened}) {
    const auto out = clearance_count(five_minutes(500, {{fresh, 0}, {event, 399}, {fresh, 401}}));
    EXPECT_FALSE(out->over);
    EXPECT_EQ(out->restarts, 1);
    EXPECT_DOUBLE_EQ(out->left_s, 401 + 300 - 500);
  }
}

TEST(ClearanceCount, WhatCameAfterTheWholeTimeTakesNothingBack) {
  const auto out = clearance_count(five_minutes(900, {{fresh, 0}, {ExhaustEvent::Bake, 400}}));
  EXPECT_TRUE(out->over);
  EXPECT_EQ(out->restarts, 0);
}

TEST(ClearanceCount, TimesTwiceOrGoingBackAreRefused) {
  const auto twice =
      clearance_count(five_minutes(500, {{fresh, 50}, {ExhaustEvent::DoorOpened, 50}}));
  ASSERT_FALSE(twice);
  EXPECT_EQ(twice.error().arg("field"), "changes[1].at_s");
  EXPECT_EQ(clearance_count(five_minutes(50, {})).error().arg("field"), "now_s");
}

}  // namespace
}  // namespace jambline::trade
