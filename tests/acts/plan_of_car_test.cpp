// The plan of a car from what people wrote about it. Which kinds sanding and polishing may fix:
// common practice, no source.
#include "folds/planned_car.h"
#include "job/body_shape.h"
#include "tests/acts/one_device.h"

namespace jambline::acts {
namespace {

using folds::NotPlanned;
using job::DefectKind;
using job::MarkEnd;
using job::Round;

class PlanOfCarTest : public DecideTest {
 protected:
  MarkId placed(double x_mm, DefectKind kind = DefectKind::Nib, int size = 1,
                job::Layer layer = job::Layer::InClear) {
    auto place = nib(x_mm, 700);
    place.defect = kind;
    place.size = size;
    place.layer = layer;
    did(place);
    return panel(Panel::Hood).marks.back().mark;
  }
  folds::PlannedCar planned(folds::PlanChoice choice = {}) {
    auto out = folds::planned_car(car(), {}, choice);
    EXPECT_TRUE(out) << code_name(out.error().code);
    return out ? std::move(*out) : folds::PlannedCar{};
  }
  void finish(Round round, std::vector<MarkId> marks,
              job::RoundHow how = job::RoundHow::AsPlanned) {
    ready_to_cut();
    did(FinishRound{job, Panel::Hood, round, how, std::move(marks), 1, 1000, {}});
  }
  std::vector<Round> left_to_do(std::map<DefectKind, Round> proved = {}) {
    std::vector<Round> out;
    folds::PlanChoice choice;
    choice.proved_start = std::move(proved);
    for (const auto& step : planned(choice).walk.steps)
      if (!step.done) out.push_back(step.round);
    return out;
  }
};

TEST_F(PlanOfCarTest, ACarThatNobodyLookedOverHasNoPlan) {
  EXPECT_EQ(folds::planned_car(car(), {}, {}).error().arg("what"), "verdict");
  did(GiveVerdict{job, Panel::Hood, Verdict::Clean, true, {}});
  EXPECT_EQ(folds::planned_car(car(), {}, {}).error().arg("what"), "marks");
}

TEST_F(PlanOfCarTest, WhatSandingDoesNotFixIsNamedWithTheReason) {
  const std::pair<DefectKind, NotPlanned> kinds[] = {
      {DefectKind::RunInBase, NotPlanned::Redo},
      {DefectKind::SolventPop, NotPlanned::Redo},
      {DefectKind::Pinhole, NotPlanned::BackToPrep},
      {DefectKind::Mottle, NotPlanned::Redo},
      {DefectKind::PrimerShowing, NotPlanned::Redo},
      {DefectKind::BurnThrough, NotPlanned::Redo},
      {DefectKind::Wrinkle, NotPlanned::Redo},
      {DefectKind::ColorMismatch, NotPlanned::Tint},
      {DefectKind::SoftFilm, NotPlanned::StripIfSoft},
      {DefectKind::AdhesionLoss, NotPlanned::Redo},
      {DefectKind::RunOrSag, NotPlanned::LongerRest}};
  double x_mm = 300;
  for (const auto& [kind, why] : kinds) placed(x_mm += 40, kind);
  const auto plan = planned();
  ASSERT_EQ(plan.walk.left_out.size(), std::size(kinds));
  for (std::size_t i = 0; i < std::size(kinds); ++i)
    EXPECT_EQ(plan.walk.left_out[i].why, kinds[i].second) << word_of(kinds[i].first);
  EXPECT_TRUE(plan.walk.steps.empty());
}

TEST_F(PlanOfCarTest, ANibUnderTheClearIsRedoAndOneInItIsLevelled) {
  const MarkId in = placed(500);
  const MarkId under = placed(700, DefectKind::Nib, 1, job::Layer::UnderClear);
  const auto plan = planned();
  ASSERT_EQ(plan.walk.left_out.size(), 1U);
  EXPECT_EQ(plan.walk.left_out.front().mark, under);
  ASSERT_EQ(plan.walk.steps.size(), 5U);
  EXPECT_EQ(plan.walk.steps.front().round, Round::Level);
  EXPECT_EQ(plan.walk.steps.front().stations.front().marks, std::vector<MarkId>{in});
}

TEST_F(PlanOfCarTest, ARunWaitsUntilSomebodySaysThatItIsHard) {
  placed(500, DefectKind::RunOrSag);
  EXPECT_TRUE(planned().walk.steps.empty());
  folds::PlanChoice choice;
  choice.heavy_film_is_hard = true;
  EXPECT_EQ(planned(choice).walk.steps.size(), 5U);
}

TEST_F(PlanOfCarTest, MattePanelsNeverGetIn) {
  placed(500);
  auto plan = panel(Panel::Hood).plan;
  plan.finish = job::Finish::Matte;
  did(PlanPanel{job, plan});
  const auto matte = planned();
  EXPECT_TRUE(matte.walk.steps.empty());
  ASSERT_EQ(matte.walk.left_out.size(), 1U);
  EXPECT_EQ(matte.walk.left_out.front().why, NotPlanned::DoNotCut);
}

TEST_F(PlanOfCarTest, AProvedStartLeavesTheRoundsBeforeOut) {
  placed(500);
  folds::PlanChoice choice;
  choice.proved_start[DefectKind::Nib] = Round::Compound;
  const auto plan = planned(choice);
  ASSERT_EQ(plan.walk.steps.size(), 3U);
  EXPECT_EQ(plan.walk.steps.front().round, Round::Compound);
}

TEST_F(PlanOfCarTest, OneThatCameBackGoesThroughItsRoundsOnceMore) {
  const MarkId first = placed(500);
  const MarkId second = placed(800);
  for (const Round round : folds::whole_sequence()) finish(round, {first, second});
  EXPECT_TRUE(left_to_do().empty());
  EXPECT_EQ(planned().walk.asked.size(), 2U);
  did(EndMark{job, first, MarkEnd::Gone});
  did(EndMark{job, second, MarkEnd::CameBack});
  EXPECT_EQ(left_to_do({{DefectKind::Nib, Round::Polish}}).size(), 2U);
  EXPECT_TRUE(planned().walk.asked.empty());
  finish(Round::Polish, {second});
  EXPECT_EQ(left_to_do({{DefectKind::Nib, Round::Polish}}).front(), Round::Finish);
}

// Two whole sequences of the usual table take 13 um; 12 um in the panel's life is common practice.
TEST_F(PlanOfCarTest, ASecondWholeSequenceIsMoreThanTheFilmGives) {
  const MarkId mark = placed(500);
  for (const Round round : folds::whole_sequence()) finish(round, {mark});
  did(EndMark{job, mark, MarkEnd::CameBack});
  const auto plan = planned();
  EXPECT_TRUE(plan.walk.steps.empty());
  ASSERT_EQ(plan.walk.left_out.size(), 1U);
  EXPECT_EQ(plan.walk.left_out.front().why, NotPlanned::FilmSaysNo);
}

TEST_F(PlanOfCarTest, ASkippedRoundIsPassedAndAMarkThatIsNewBeginsAtItsStart) {
  const MarkId first = placed(500);
  finish(Round::Level, {first});
  finish(Round::Refine, {first}, job::RoundHow::Skipped);
  EXPECT_EQ(left_to_do().front(), Round::Compound);
  const MarkId fresh = placed(900);
  const auto plan = planned();
  EXPECT_EQ(plan.walk.now()->round, Round::Level);
  EXPECT_EQ(plan.walk.now()->stations.front().left, std::vector<MarkId>{fresh});
  EXPECT_EQ(plan.walk.now()->areas, 1);
}

TEST_F(PlanOfCarTest, ABurnThroughTakesThePanelOutOfThePlan) {
  const MarkId first = placed(500);
  placed(800);
  did(EndMark{job, first, MarkEnd::BurnThrough});
  const auto plan = planned();
  EXPECT_TRUE(plan.walk.steps.empty());
  ASSERT_EQ(plan.walk.left_out.size(), 1U);
  EXPECT_EQ(plan.walk.left_out.front().why, NotPlanned::PanelWaits);
}

TEST_F(PlanOfCarTest, DirtAllOverIsWorkedOnWholeByTheMinutesOfItsArea) {
  did(SayDirtAllOver{job, Panel::Hood, job::DirtClass::From20To50});
  const auto plan = planned();
  ASSERT_EQ(plan.walk.steps.size(), 5U);
  const double area_mm2 =
      trade::area_mm2(job::pattern(car().body).find(Panel::Hood)->shape.outline);
  const auto& level = plan.walk.steps.front().stations.front();
  EXPECT_TRUE(level.whole);
  EXPECT_DOUBLE_EQ(level.minutes, 0.5 * area_mm2 / 90'000);  // half a minute on 300 x 300 mm
  ready_to_cut();
  for (const Round round : folds::whole_sequence())
    did(FinishRound{job, Panel::Hood, round, job::RoundHow::AsPlanned, {}, 1, area_mm2, {}});
  EXPECT_EQ(planned().walk.now(), nullptr);
}

TEST_F(PlanOfCarTest, AThinClearThatWasReadKeepsThePanelOut) {
  placed(500);
  EXPECT_EQ(planned().walk.steps.size(), 5U);
  did(ReadFilm{job,
               Panel::Hood,
               1,
               job::FilmWhen::BeforeCutting,
               job::FilmGauge::Clear,
               job::FilmUnit::Micron,
               {38, 39, 38}});
  const auto plan = planned();
  EXPECT_TRUE(plan.walk.steps.empty());
  ASSERT_EQ(plan.walk.left_out.size(), 1U);
  EXPECT_EQ(plan.walk.left_out.front().why, NotPlanned::FilmSaysNo);
}

TEST_F(PlanOfCarTest, OwnMinutesCountFromTenAreasOn) {
  placed(500);
  folds::ShopLessons lessons;
  lessons.times = {{Round::Level, 9, 9 * 90'000.0, 18}};
  auto out = folds::planned_car(car(), lessons, {});
  ASSERT_TRUE(out);
  EXPECT_FALSE(out->of.plan.rounds.front().own_min_per_area);
  lessons.times.front() = {Round::Level, 10, 10 * 90'000.0, 20};
  out = folds::planned_car(car(), lessons, {});
  ASSERT_TRUE(out);
  EXPECT_DOUBLE_EQ(out->of.plan.rounds.front().own_min_per_area.value(), 2.0);
}

}  // namespace
}  // namespace jambline::acts
