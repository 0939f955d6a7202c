#include "trade/film.h"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>

namespace jambline::trade {
namespace {

FilmBudget ultrasonic(double clear_um) {
  FilmBudget out;
  out.clear_um = {clear_um, clear_um, clear_um};
  return out;
}

TEST(Film, AnUltrasonicReadingLosesTheValleysOnly) {
  FilmBudget in = ultrasonic(60);
  in.steps = {{"whole", {6, 1}}};
  const auto out = film_budget(in);
  ASSERT_TRUE(out);
  EXPECT_EQ(out->source, FilmSource::Ultrasonic);
  EXPECT_DOUBLE_EQ(out->clear.mean_um, 56);                     // 60 - 4
  EXPECT_DOUBLE_EQ(out->clear.sd_um, std::sqrt(2.25 / 3 + 1));  // gauge of three, valleys
  EXPECT_DOUBLE_EQ(out->after[0].left.mean_um, 50);
  EXPECT_DOUBLE_EQ(out->after[0].left.sd_um, std::sqrt(2.75));
  EXPECT_DOUBLE_EQ(out->after[0].taken.mean_um, 6);
  EXPECT_EQ(out->word, FilmWord::Room);
  // 12 is six spreads from 6; 40 is a little more than six from 50.
  EXPECT_EQ(out->bound_by, FilmBound::TakenInLife);
  EXPECT_NEAR(out->chance_percent, 9.866e-8, 1e-10);
}

TEST(Film, TotalLessBaseTakesSealerEdgeAndValleysOff) {
  FilmBudget in;
  in.total_after_um = {130};
  in.total_before_base_um = {60};
  in.sealer = Spread_um{20, 4};
  in.edge_thinner_percent = 20;
  const auto out = film_budget(in);
  ASSERT_TRUE(out);
  EXPECT_EQ(out->source, FilmSource::TotalLessBase);
  EXPECT_NEAR(out->clear.mean_um, (130 - 60 - 18 - 20) * 0.8 - 4, 1e-12);
  EXPECT_NEAR(out->clear.sd_um, std::sqrt((4.5 + 16 + 16) * 0.64 + 1), 1e-12);
  EXPECT_NEAR(out->likely_high_um - out->clear.mean_um, 1.6448536 * out->clear.sd_um, 1e-6);
}

TEST(Film, WithoutReadingsCoatsTimesBuildAndItsSpreadIsTheWidest) {
  FilmBudget in;
  in.substrate = FilmSubstrate::Plastic;
  const auto out = film_budget(in);
  ASSERT_TRUE(out);
  EXPECT_EQ(out->source, FilmSource::CoatsTimesBuild);
  EXPECT_DOUBLE_EQ(out->clear.mean_um, 52);                  // 2 x 28 - 4
  EXPECT_DOUBLE_EQ(out->clear.sd_um, std::sqrt(144.0 + 1));  // the coats go together
  EXPECT_EQ(out->widest, "build per coat");
}

TEST(Film, TheBestSourceWins) {
  FilmBudget in = ultrasonic(60);
  in.total_after_um = {300};
  in.total_before_base_um = {60};
  EXPECT_EQ(film_budget(in)->source, FilmSource::Ultrasonic);
}

TEST(Film, TheWordFallsWithTheFilm) {
  const auto word = [](double clear_um) {
    FilmBudget in = ultrasonic(clear_um);
    in.steps = {{"coarse", {4, 1}}, {"fine", {3, 1}}};
    return film_budget(in)->word;
  };
  EXPECT_EQ(word(60), FilmWord::Room);
  EXPECT_EQ(word(52), FilmWord::OneLightPass);  // 41 left of all, 45 of the lighter alone
  EXPECT_EQ(word(45), FilmWord::DoNotCut);      // the lighter alone leaves 38
}

TEST(Film, EarlierCuttingOfTheSameClearCounts) {
  FilmBudget in = ultrasonic(120);
  in.steps = {{"whole", {3, 0.1}}};
  EXPECT_EQ(film_budget(in)->word, FilmWord::Room);
  in.taken_before_um = 11;
  const auto out = film_budget(in);
  EXPECT_EQ(out->word, FilmWord::DoNotCut);
  EXPECT_EQ(out->bound_by, FilmBound::TakenInLife);
}

TEST(Film, WhatWasTakenSinceTheReadingIsGoneAndCountsInThePanelsLife) {
  FilmBudget in = ultrasonic(60);
  in.taken_since = Spread_um{6, 2};
  in.taken_before_um = 1;
  in.steps = {{"whole", {3, 1}}};
  const auto out = film_budget(in);
  ASSERT_TRUE(out);
  EXPECT_DOUBLE_EQ(out->clear.mean_um, 50);                         // 60 - 4 - 6
  EXPECT_DOUBLE_EQ(out->clear.sd_um, std::sqrt(2.25 / 3 + 1 + 4));  // gauge, valleys, taken
  EXPECT_DOUBLE_EQ(out->after[0].left.mean_um, 47);
  EXPECT_DOUBLE_EQ(out->after[0].taken.mean_um, 10);
  EXPECT_DOUBLE_EQ(out->after[0].taken.sd_um, std::sqrt(5.0));
  in.taken_since->mean_um = -1;
  EXPECT_FALSE(film_budget(in));
}

TEST(Film, AnotherPaintsUsualBaseIsNobodysEntry) {
  FilmBudget in;
  in.total_after_um = {150};
  in.total_before_base_um = {60};
  in.base = usual_tri_coat_base;
  EXPECT_EQ(film_budget(in)->basis.find("base")->source, common_practice);
  in.base = {30, 4};
  EXPECT_EQ(film_budget(in)->basis.find("base")->source, entered);
}

TEST(Film, MatteIsNeverCutHoweverThick) {
  FilmBudget in = ultrasonic(300);
  in.may_be_cut = false;
  const auto out = film_budget(in);
  EXPECT_EQ(out->word, FilmWord::DoNotCut);
  EXPECT_EQ(out->bound_by, FilmBound::Surface);
}

TEST(Film, TheBasisSaysWhoseTheLimitIs) {
  FilmBudget in = ultrasonic(60);
  EXPECT_EQ(film_budget(in)->basis.find("clear to be left")->source, common_practice);
  in.leave_um = 45;
  const auto out = film_budget(in);
  EXPECT_EQ(out->basis.find("clear to be left")->source, entered);
  EXPECT_EQ(out->basis.find("clear to be left")->value, 45);
  EXPECT_EQ(out->basis.find("readings of it")->value, 3);
}

void expect_refused(const FilmBudget& in, const char* field) {
  const auto out = film_budget(in);
  ASSERT_FALSE(out) << field;
  EXPECT_EQ(out.error().arg("field"), field);
}

TEST(Film, WhatCannotBeIsRefusedByName) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  FilmBudget in = ultrasonic(60);
  in.clear_um[1] = nan;
  expect_refused(in, "clear_um[1]");
  in = ultrasonic(60);
  in.steps = {{"a", {1, 0}}, {"b", {-1, 0}}};
  expect_refused(in, "steps[1].removal.mean_um");
  in = ultrasonic(60);
  in.coats = 0;
  expect_refused(in, "coats");
  in = ultrasonic(60);
  in.leave_um = std::numeric_limits<double>::infinity();
  expect_refused(in, "leave_um");
  in = {};
  in.substrate = FilmSubstrate::Carbon;
  in.total_after_um = {130};
  in.total_before_base_um = {60};
  expect_refused(in, "substrate");
  in.substrate = FilmSubstrate::Aluminum;
  in.total_before_base_um.clear();
  expect_refused(in, "total_before_base_um");
  in.total_before_base_um = {125};
  expect_refused(in, "total_after_um");  // 130 - 125 - 18 is no film
}

TEST(FilmLearning, FourDifferencesTeachNothingAndFiveDo) {
  RemovalLearning in{{6, 2}, {8, 8, 8, 8}, 1.5, 3};
  EXPECT_FALSE(learn_removal(in)->updated);
  EXPECT_DOUBLE_EQ(learn_removal(in)->learned.mean_um, 6);
  in.taken_um.push_back(8);
  const auto out = learn_removal(in);
  EXPECT_TRUE(out->updated);
  EXPECT_FALSE(out->shown);
  // Prior weight 1/4; data weight 5 over the gauge's 1.5^2 x 2/3.
  EXPECT_NEAR(out->learned.mean_um, (6 * 0.25 + 8 * 5 / 1.5) / (0.25 + 5 / 1.5), 1e-12);
}

TEST(FilmLearning, IsNeverSurerThanTheGaugeAndShownFromTen) {
  const RemovalLearning in{{6, 2}, std::vector<double>(500, 8), 1.5, 3};
  const auto out = learn_removal(in);
  EXPECT_TRUE(out->shown);
  EXPECT_DOUBLE_EQ(out->learned.sd_um, 1.5);
  EXPECT_NEAR(out->learned.mean_um, 8, 0.01);
}

TEST(FilmLearning, APriorWithoutSpreadIsRefused) {
  const auto out = learn_removal({{6, 0}, {}, 1.5, 3});
  ASSERT_FALSE(out);
  EXPECT_EQ(out.error().arg("field"), "prior.sd_um");
}

TEST(FilmAcceptance, AGoodMeanDoesNotExcuseABadSpot) {
  const auto good = accept_film({{50, 55, 45}, 45, 60});
  EXPECT_TRUE(good->accepted);
  const auto spot = accept_film({{50, 55, 35}, 45, 60});  // a spot may be 36 at least
  EXPECT_FALSE(spot->accepted);
  EXPECT_EQ(spot->bad_spots, std::vector<int>{2});
  const auto mean = accept_film({{40, 41}, 45, 60});
  EXPECT_FALSE(mean->accepted);
  EXPECT_TRUE(mean->bad_spots.empty());
}

}  // namespace
}  // namespace jambline::trade
