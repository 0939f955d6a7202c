#include "trade/cure_clock.h"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>

namespace jambline::trade {
namespace {

// 16 h at 20 C and 30 min at 60 C, for sanding.
CureClock film_at(double surface_c, double now_min) {
  CureClock out;
  out.steps = {{CureMilestone::SandFrom, {{20, 960}, {60, 30}}}};
  out.readings = {{0, surface_c}};
  out.now_min = now_min;
  return out;
}

CureStanding standing(const CureClock& clock) {
  const auto result = cure_clock(clock);
  EXPECT_TRUE(result);
  return result ? result->standings.at(0) : CureStanding{};
}
std::string field(const CureClock& clock) {
  const auto result = cure_clock(clock);
  return result ? "taken" : result.error().subject;
}

TEST(CureClock, HalfTheTimeIsHalfDone) {
  const auto half = standing(film_at(60, 15));
  EXPECT_NEAR(half.done_percent, 50, 1e-9);
  EXPECT_NEAR(half.equivalent_min, 480, 1e-9);  // of the first point's 16 h
  EXPECT_EQ(half.word, CureWord::NotYet);
  EXPECT_NEAR(*half.reached_min, 30, 1e-9);
}

TEST(CureClock, BetweenThePointsTimeIsStraightOverTheInverseTemperature) {
  // In the middle of 1 / T the time is the geometric mean.
  const double middle_k = 2 / (1 / 293.15 + 1 / 333.15);
  EXPECT_NEAR(minutes_at({{60, 30}, {20, 960}}, middle_k - 273.15), std::sqrt(960.0 * 30), 1e-9);
  EXPECT_NEAR(activation_energy_j_mol(20, 960, 60, 30),
              8.314462618 * std::log(32.0) / (1 / 293.15 - 1 / 333.15), 1e-9);
}

TEST(CureClock, NothingIsExtrapolated) {
  const std::vector<CurePoint> points{{20, 960}, {60, 30}};
  EXPECT_EQ(minutes_at(points, 90), 30);
  EXPECT_TRUE(std::isinf(minutes_at(points, 19.9)));
  const auto cold = standing(film_at(19, 5000));
  EXPECT_EQ(cold.done_percent, 0);
  EXPECT_EQ(cold.word, CureWord::Stalled);
  EXPECT_FALSE(cold.reached_min);
  EXPECT_TRUE(cure_clock(film_at(19, 5000))->outside_points);
  EXPECT_FALSE(cure_clock(film_at(40, 50))->outside_points);
}

TEST(CureClock, OnlyTheWarmPartOfADayCounts) {
  // An hour under the coldest point, then straight up to it, then the rest on it.
  CureClock clock = film_at(10, 60 + 60 + 96);
  clock.readings = {{0, 10}, {60, 10}, {120, 20}};
  EXPECT_NEAR(standing(clock).done_percent, 10, 1e-9);
}

TEST(CureClock, OneSpreadWarmerIsEarlierAndColderLater) {
  const auto one = standing(film_at(40, 10));
  EXPECT_LT(*one.early_min, *one.reached_min);
  EXPECT_GT(*one.late_min, *one.reached_min);
  EXPECT_NEAR(
      *one.early_min - 10,
      (1 - 10 / minutes_at({{20, 960}, {60, 30}}, 42)) * minutes_at({{20, 960}, {60, 30}}, 42),
      1e-9);
}

TEST(CureClock, AWarmSurfaceIsNotTouched) {
  CureClock clock = film_at(60, 40);
  EXPECT_TRUE(cure_clock(clock)->too_hot);
  EXPECT_EQ(standing(clock).word, CureWord::Gated);
  clock.readings = {{0, 60}, {40, 60}, {60, 30}};
  clock.now_min = 60;
  EXPECT_EQ(standing(clock).word, CureWord::Reached);  // 30 C is not over 30
}

TEST(CureClock, AfterABakeItRestsAndARunRestsLonger) {
  CureClock clock = film_at(60, 129);
  clock.readings = {{0, 60}, {40, 60}, {70, 22}};
  clock.bake_end_min = 70;
  EXPECT_EQ(standing(clock).word, CureWord::Gated);
  EXPECT_EQ(*standing(clock).gate_until_min, 130);
  clock.now_min = 130;
  EXPECT_EQ(standing(clock).word, CureWord::Reached);
  clock.heavy_film = true;
  EXPECT_EQ(*standing(clock).gate_until_min, 250);
  EXPECT_EQ(standing(clock).word, CureWord::Gated);
}

TEST(CureClock, ASoftThumbnailHoldsIt) {
  CureClock clock = film_at(25, 5000);
  EXPECT_EQ(standing(clock).word, CureWord::Reached);
  clock.thumbnail = ThumbnailCheck::NotYet;
  EXPECT_EQ(standing(clock).word, CureWord::Gated);
}

TEST(CureClock, WhatWasLearnedLengthensOnlyWhatTouchesTheFilm) {
  CureClock in = film_at(20, 960);
  in.steps.push_back({CureMilestone::Handle, {{20, 960}}});
  in.learned_factor = 1.5;
  const auto out = cure_clock(in);
  ASSERT_TRUE(out);
  EXPECT_EQ(out->standings[0].word, CureWord::NotYet);
  EXPECT_NEAR(out->standings[0].reached_min.value_or(0), 1440, 1e-6);
  EXPECT_NEAR(out->standings[0].equivalent_min, 960, 1e-6);
  EXPECT_EQ(out->standings[1].word, CureWord::Reached);
  EXPECT_TRUE(out->basis.find("longer, learned from thumbnail checks"));
  in.learned_factor = 0.9;
  EXPECT_EQ(field(in), "learned_factor") << "never shorter than the sheet";
}

TEST(CureClock, WhatDoesNotTouchTheFilmHasNoGate) {
  CureClock clock = film_at(60, 40);
  clock.steps[0].milestone = CureMilestone::DustFree;
  clock.bake_end_min = 40;
  EXPECT_EQ(standing(clock).word, CureWord::Reached);
  EXPECT_FALSE(standing(clock).gate_until_min);
}

TEST(CureClock, ColderThanTheProductCuresItStandsStill) {
  CureClock clock = film_at(20, 100);
  clock.minimum_c = 21;
  EXPECT_TRUE(cure_clock(clock)->stalled);
  EXPECT_EQ(standing(clock).word, CureWord::Stalled);
}

TEST(CureClock, WhatRunsOutIsNotThoughtToLastLonger) {
  CureClock clock = film_at(15, 480);
  clock.steps[0].milestone = CureMilestone::PotLife;
  // Colder than the sheet's coldest: its time holds, not none.
  EXPECT_NEAR(standing(clock).done_percent, 50, 1e-9);
  // Hotter than the sheet's hottest: nothing can be said before that point's time is over.
  clock = film_at(75, 20);
  clock.steps[0].milestone = CureMilestone::PotLife;
  EXPECT_EQ(standing(clock).word, CureWord::NotComputed);
  EXPECT_FALSE(standing(clock).reached_min);
  clock.now_min = 31;
  EXPECT_EQ(standing(clock).word, CureWord::Reached);
}

TEST(CureClock, LightAndMoistureCureHaveNoHeatClock) {
  for (const auto kind : {CureKind::Uv, CureKind::MoistureCure}) {
    CureClock clock = film_at(60, 300);
    clock.kind = kind;
    EXPECT_FALSE(cure_clock(clock)->computed);
    EXPECT_EQ(standing(clock).word, CureWord::NotComputed);
  }
}

TEST(CureClock, WhatContradictsItselfIsRefusedByName) {
  CureClock clock = film_at(30, 10);
  clock.steps[0].points = {{20, 960}, {20, 900}};
  EXPECT_EQ(field(clock), "steps[0].points");
  clock.steps[0].points = {{20, 30}, {60, 31}};
  EXPECT_EQ(field(clock), "steps[0].points");
  clock.steps[0].points = {};
  EXPECT_EQ(field(clock), "steps[0].points");
  clock = film_at(-300, 10);
  EXPECT_EQ(field(clock), "readings[0].surface_c");
  clock = film_at(std::numeric_limits<double>::infinity(), 10);
  EXPECT_EQ(field(clock), "readings[0].surface_c");
  clock = film_at(30, 10);
  clock.readings = {{0, 30}, {5, 31}, {5, 32}};
  EXPECT_EQ(field(clock), "readings[2].at_min");
  clock.readings = {};
  EXPECT_EQ(field(clock), "readings");
  clock = film_at(30, 10);
  clock.steps = {};
  EXPECT_EQ(field(clock), "steps");
}

// Rows as an adhesive maker prints them; our own numbers.
DriveAway glass(std::optional<double> coldest_c, std::optional<double> driest_percent) {
  DriveAway out;
  out.rows = {{5, 30, 480}, {5, 50, 360}, {20, 30, 120}, {20, 50, 60}};
  out.coldest_c = coldest_c;
  out.driest_percent = driest_percent;
  return out;
}

TEST(DriveAway, TheRowThatIsNotWarmerAndNotMoister) {
  EXPECT_EQ(*drive_away(glass(20, 50))->minutes, 60);
  EXPECT_EQ(*drive_away(glass(31, 80))->minutes, 60);
  EXPECT_EQ(*drive_away(glass(19.9, 80))->minutes, 360);
  EXPECT_EQ(*drive_away(glass(20, 49))->minutes, 120);
  EXPECT_EQ(*drive_away(glass(5, 30))->minutes, 480);
}

TEST(DriveAway, ColderOrDrierThanTheTableHasNoTime) {
  EXPECT_FALSE(drive_away(glass(4.9, 60))->minutes);
  EXPECT_FALSE(drive_away(glass(20, 29))->minutes);
}

TEST(DriveAway, WhatIsNotKnownIsTakenAsTheWorst) {
  EXPECT_EQ(*drive_away(glass({}, {}))->minutes, 480);
  EXPECT_EQ(*drive_away(glass(25, {}))->minutes, 120);
  EXPECT_TRUE(drive_away(glass(25, {}))->worst_assumed);
  EXPECT_FALSE(drive_away(glass(25, 40))->worst_assumed);
  EXPECT_FALSE(drive_away({}));
}

}  // namespace
}  // namespace jambline::trade
