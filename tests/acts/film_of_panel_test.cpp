#include "folds/film_of_panel.h"

#include <cmath>
#include <gtest/gtest.h>

#include "base/random.h"

namespace jambline::folds {
namespace {
using job::FilmGauge;
using job::FilmWhen;
using job::Round;
using trade::FilmSource;
using trade::FilmWord;

// What stands on a panel, in the order in which it is said.
class FilmOfPanelTest : public ::testing::Test {
 protected:
  void read(FilmWhen when, FilmGauge gauge, std::vector<double> readings_um, int spot = 1) {
    FilmView film;
    film.spot = spot;
    film.when = when;
    film.gauge = gauge;
    for (const double um : readings_um)
      film.mean_um += um / static_cast<double>(readings_um.size());
    film.readings_um = std::move(readings_um);
    film.order.seq = ++said_;
    panel_.film.push_back(std::move(film));
  }
  void did(std::vector<Round> rounds, const std::vector<MarkId>& marks) {
    for (const Round one : rounds) {
      RoundView round;
      round.round = one;
      round.marks = marks;
      round.order.seq = ++said_;
      panel_.rounds.push_back(std::move(round));
    }
  }
  FilmOfPanel film() const { return film_of_panel(panel_, {whole_sequence()}, learned_); }
  trade::FilmBudgetResult result() const { return *trade::film_budget(film().budget); }

  PanelView panel_;
  std::vector<LearnedSequence> learned_;
  SeededRandom random_{4};
  MarkId first_ = random_.make<MarkId>();
  MarkId second_ = random_.make<MarkId>();
  std::uint64_t said_ = 0;
};

TEST_F(FilmOfPanelTest, WithoutReadingsTwoCoatsTellOfOneLightPass) {
  EXPECT_EQ(film().source, FilmSource::CoatsTimesBuild);
  EXPECT_EQ(film().budget.coats, 2);
  EXPECT_EQ(result().word, FilmWord::OneLightPass);
  panel_.plan.treatment = job::Treatment::NotRefinished;
  EXPECT_TRUE(film().old_clear);
  EXPECT_EQ(film().budget.coats, 1);
}

TEST_F(FilmOfPanelTest, TheClearAloneComesBeforeTotalsAndTotalsBeforeTheCoats) {
  read(FilmWhen::BeforeBase, FilmGauge::Total, {60, 61, 62});
  EXPECT_EQ(film().source, FilmSource::CoatsTimesBuild);
  EXPECT_EQ(film().note, FilmNote::OneTotalOnly);
  read(FilmWhen::BeforeCutting, FilmGauge::Total, {140, 141, 142});
  EXPECT_EQ(film().source, FilmSource::TotalLessBase);
  EXPECT_DOUBLE_EQ(result().clear.mean_um, 141 - 61 - 18 - 4);  // base 18, valleys 4
  read(FilmWhen::BeforeCutting, FilmGauge::Clear, {55, 56, 57});
  EXPECT_EQ(film().source, FilmSource::Ultrasonic);
  EXPECT_DOUBLE_EQ(result().clear.mean_um, 56 - 4);
}

TEST_F(FilmOfPanelTest, ATotalWantsOneOfTheSameSpotBeforeBase) {
  read(FilmWhen::BeforeBase, FilmGauge::Total, {60, 61, 62}, 1);
  read(FilmWhen::BeforeCutting, FilmGauge::Total, {140, 141, 142}, 2);
  EXPECT_EQ(film().source, FilmSource::CoatsTimesBuild);
  EXPECT_EQ(film().note, FilmNote::OneTotalOnly);
}

TEST_F(FilmOfPanelTest, TotalsOnPlasticAndCarbonDoNotCount) {
  read(FilmWhen::BeforeBase, FilmGauge::Total, {60, 61, 62});
  read(FilmWhen::BeforeCutting, FilmGauge::Total, {140, 141, 142});
  for (const auto substrate : {trade::Substrate::Plastic, trade::Substrate::Carbon}) {
    panel_.plan.substrate = substrate;
    EXPECT_EQ(film().source, FilmSource::CoatsTimesBuild);
    EXPECT_EQ(film().note, FilmNote::NoMetal);
    EXPECT_TRUE(trade::film_budget(film().budget));
  }
}

TEST_F(FilmOfPanelTest, TheThinnestSpotCounts) {
  read(FilmWhen::BeforeCutting, FilmGauge::Clear, {60, 60, 60}, 1);
  read(FilmWhen::BeforeCutting, FilmGauge::Clear, {48, 49, 50}, 2);
  read(FilmWhen::BeforeCutting, FilmGauge::Clear, {70, 70, 70}, 3);
  EXPECT_EQ(film().spot, 2);
  EXPECT_EQ(film().budget.clear_um, (std::vector<double>{48, 49, 50}));
}

TEST_F(FilmOfPanelTest, WhatIsUnderTheClearFollowsThePaint) {
  read(FilmWhen::BeforeBase, FilmGauge::Total, {60, 61, 62});
  read(FilmWhen::BeforeCutting, FilmGauge::Total, {140, 141, 142});
  panel_.plan.finish = job::Finish::TriCoat;
  EXPECT_DOUBLE_EQ(film().budget.base.mean_um, 35);
  panel_.plan.finish = job::Finish::SingleStageSolid;
  EXPECT_DOUBLE_EQ(film().budget.base.mean_um, 0);
  panel_.plan.finish = job::Finish::GlossBaseClear;
  panel_.plan.treatment = job::Treatment::ClearOnly;
  EXPECT_DOUBLE_EQ(film().budget.base.mean_um, 0);
}

TEST_F(FilmOfPanelTest, MatteTexturedAndFilmAreNeverCut) {
  read(FilmWhen::BeforeCutting, FilmGauge::Clear, {300, 300, 300});
  for (const auto finish : {job::Finish::Matte, job::Finish::Textured, job::Finish::Film}) {
    panel_.plan.finish = finish;
    EXPECT_EQ(result().word, FilmWord::DoNotCut);
    EXPECT_EQ(result().bound_by, trade::FilmBound::Surface);
  }
}

TEST_F(FilmOfPanelTest, RoundsAfterTheReadingAreGoneAndThoseBeforeItCount) {
  did({Round::Level, Round::Finish}, {first_});
  read(FilmWhen::BeforeCutting, FilmGauge::Clear, {80, 80, 80});
  EXPECT_DOUBLE_EQ(film().budget.taken_before_um, 2.5 + 0.3);  // as trade::usual_rounds() says
  EXPECT_FALSE(film().budget.taken_since);
  did({Round::Compound, Round::Polish}, {first_});
  did({Round::Compound}, {second_});
  ASSERT_TRUE(film().budget.taken_since);
  EXPECT_DOUBLE_EQ(film().budget.taken_since->mean_um,
                   1.5 + 0.7);  // of the first mark, not of both
  did({Round::Finish}, {});     // over the whole panel
  EXPECT_DOUBLE_EQ(film().budget.taken_since->mean_um, 1.5 + 0.7 + 0.3);
  panel_.rounds.back().how = job::RoundHow::Skipped;
  EXPECT_DOUBLE_EQ(film().budget.taken_since->mean_um, 1.5 + 0.7);
}

TEST_F(FilmOfPanelTest, WhatWasReadComesBeforeWhatARoundUsuallyTakes) {
  read(FilmWhen::BeforeCutting, FilmGauge::Clear, {80, 80, 80});
  did({Round::Level, Round::Finish}, {first_});
  read(FilmWhen::AfterSequence, FilmGauge::Clear, {75, 75, 75});
  panel_.film.back().taken_um = 5;
  EXPECT_DOUBLE_EQ(film().budget.taken_before_um, 5);
  EXPECT_EQ(film().budget.clear_um, (std::vector<double>{75, 75, 75}));
}

TEST_F(FilmOfPanelTest, AReadingBeforeBaseAfterARoundBeginsANewClear) {
  read(FilmWhen::BeforeBase, FilmGauge::Total, {60, 61, 62});
  read(FilmWhen::BeforeCutting, FilmGauge::Total, {140, 141, 142});
  did(whole_sequence(), {first_});
  EXPECT_TRUE(film().budget.taken_since);
  read(FilmWhen::BeforeBase, FilmGauge::Total, {90, 91, 92});
  EXPECT_EQ(film().note, FilmNote::OneTotalOnly);
  EXPECT_FALSE(film().budget.taken_since);
  read(FilmWhen::BeforeCutting, FilmGauge::Total, {180, 181, 182});
  EXPECT_EQ(film().budget.total_before_base_um, (std::vector<double>{90, 91, 92}));
}

TEST_F(FilmOfPanelTest, OwnSequencesAreUsedFromTenReadingsOn) {
  learned_ = {{whole_sequence(), std::vector<double>(9, 9.0)}};
  const auto taken_um = [&] {
    double sum = 0;
    for (const auto& step : film().budget.steps) sum += step.removal.mean_um;
    return sum;
  };
  EXPECT_NEAR(taken_um(), 6.5, 1e-12);
  learned_[0].taken_um.push_back(9.0);
  EXPECT_GT(taken_um(), 8);
  EXPECT_EQ(film().learned_from, 10);
  EXPECT_EQ(film().budget.steps.front().name, "level");
}

}  // namespace
}  // namespace jambline::folds
