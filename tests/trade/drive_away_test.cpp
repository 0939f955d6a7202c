#include <gtest/gtest.h>

#include "trade/cure_clock.h"

namespace jambline::trade {
namespace {

DriveAway table() {
  return {{{5, 30, 480}, {5, 60, 360}, {15, 30, 240}, {15, 60, 180}, {25, 60, 60}}, {}, {}};
}

TEST(DriveAway, TakesTheNearestRowThatIsNotWarmerAndNotMoister) {
  DriveAway in = table();
  in.coldest_c = 20;
  in.driest_percent = 59;
  EXPECT_DOUBLE_EQ(*drive_away(in)->minutes, 240);
  in.driest_percent = 60;
  EXPECT_DOUBLE_EQ(*drive_away(in)->minutes, 180);
  in.coldest_c = 14.9;
  EXPECT_DOUBLE_EQ(*drive_away(in)->minutes, 360);
  in.coldest_c = 40;
  EXPECT_DOUBLE_EQ(*drive_away(in)->minutes, 60);
  in.driest_percent = 40;  // the warmest row wants 60 %
  EXPECT_DOUBLE_EQ(*drive_away(in)->minutes, 240);
}

TEST(DriveAway, ColderOrDrierThanTheTableGivesNoTime) {
  DriveAway in = table();
  in.coldest_c = 4;
  in.driest_percent = 80;
  EXPECT_FALSE(drive_away(in)->minutes);
  in.coldest_c = 20;
  in.driest_percent = 20;
  EXPECT_FALSE(drive_away(in)->minutes);
}

TEST(DriveAway, WhatIsNotKnownIsTheWorstThatTheTableHas) {
  DriveAway in = table();
  EXPECT_DOUBLE_EQ(*drive_away(in)->minutes, 480);
  EXPECT_TRUE(drive_away(in)->worst_assumed);
  in.coldest_c = 20;
  EXPECT_DOUBLE_EQ(*drive_away(in)->minutes, 240);
  in.coldest_c.reset();
  in.driest_percent = 70;
  EXPECT_DOUBLE_EQ(*drive_away(in)->minutes, 360);
  // A table whose warm row is the slow one.
  in = {{{5, 50, 60}, {25, 50, 90}}, {}, 50};
  EXPECT_DOUBLE_EQ(*drive_away(in)->minutes, 90);
}

CureClock warm(CureMilestone milestone, double surface_c) {
  CureClock out;
  out.steps = {{milestone, {{20, 600}, {40, 120}}}};
  out.readings = {{0, surface_c}};
  out.now_min = 130;
  return out;
}

TEST(CureSides, ColderThanThePointsNothingHardensButWhatRunsOutRunsOn) {
  const auto sand = cure_clock(warm(CureMilestone::SandFrom, 10));
  EXPECT_DOUBLE_EQ(sand->standings[0].done_percent, 0);
  EXPECT_EQ(sand->standings[0].word, CureWord::Stalled);
  const auto pot = cure_clock(warm(CureMilestone::PotLife, 10));
  EXPECT_NEAR(pot->standings[0].done_percent, 100 * 130.0 / 600, 1e-9);
  EXPECT_EQ(pot->standings[0].word, CureWord::NotYet);
  EXPECT_TRUE(pot->outside_points);
  EXPECT_NE(pot->basis.method.find("nothing is extrapolated"), std::string::npos);
}

TEST(CureSides, HotterThanThePointsTheEndCannotBeSaidUnlessItIsPast) {
  CureClock in = warm(CureMilestone::PolishUntil, 50);
  EXPECT_EQ(cure_clock(in)->standings[0].word, CureWord::Reached);  // 130 over 120 min
  in.now_min = 60;
  const auto open = cure_clock(in);
  EXPECT_EQ(open->standings[0].word, CureWord::NotComputed);
  EXPECT_FALSE(open->standings[0].reached_min);
  const auto sand = cure_clock(warm(CureMilestone::Handle, 50));
  EXPECT_EQ(sand->standings[0].word, CureWord::Reached);
}

TEST(CureSides, ARunWithoutABakeRestsFromWhenTheFilmWouldBeReady) {
  CureClock in = warm(CureMilestone::SandFrom, 30);
  in.now_min = 400;
  const double reached = *cure_clock(in)->standings[0].reached_min;
  EXPECT_EQ(cure_clock(in)->standings[0].word, CureWord::Reached);
  in.heavy_film = true;
  const auto out = cure_clock(in);
  EXPECT_NEAR(*out->standings[0].gate_until_min, reached + 180, 1e-9);
  EXPECT_EQ(out->standings[0].word, reached + 180 > 400 ? CureWord::Gated : CureWord::Reached);
}

}  // namespace
}  // namespace jambline::trade
