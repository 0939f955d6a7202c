#include "screens/plan_view_model.h"

#include "tests/screens/correct_desk.h"

namespace jambline::screens {
namespace {

class PlanScreen : public CorrectDesk {
 protected:
  void make() {
    work_ = std::make_unique<CorrectionWork>(*session_);
    plan_ = std::make_unique<PlanViewModel>(*session_, *work_);
    settle();
  }
  void TearDown() override {
    plan_.reset();
    work_.reset();
    ShopDesk::TearDown();
  }
  std::unique_ptr<CorrectionWork> work_;
  std::unique_ptr<PlanViewModel> plan_;
};

TEST_F(PlanScreen, IsWhatTheCalculationGivesForTheSameCar) {
  begin_shop();
  make();
  const auto of = folds::plan_of_car(car(), {}, {});
  ASSERT_TRUE(of);
  const auto result = trade::correction_plan(of->plan);
  ASSERT_TRUE(result);
  ASSERT_EQ(plan_->rounds()->rowCount(), static_cast<int>(result->stations.size()));
  for (int i = 0; i < plan_->rounds()->rowCount(); ++i)
    EXPECT_TRUE(
        at(plan_->rounds(), i, "title")
            .toString()
            .startsWith(QString::fromUtf8(
                            word_of(result->stations[static_cast<std::size_t>(i)].round).data())
                            .left(3),
                        Qt::CaseInsensitive));
  double minutes = 0;
  for (const auto& step : work_->planned()->walk().steps) minutes += step.minutes;
  EXPECT_NEAR(minutes, result->minutes, 1e-9);
  EXPECT_EQ(plan_->mainText(), "Start: level 2 marks");
}

TEST_F(PlanScreen, ACarThatNobodyLookedOverSaysSo) {
  be(add("Ivo", job::Role::Painter));
  open_car();
  make();
  EXPECT_FALSE(plan_->here());
  EXPECT_TRUE(plan_->emptyWords().startsWith("Nobody has looked over this car yet"));
  EXPECT_EQ(plan_->mainText(), "");
}

TEST_F(PlanScreen, WhatIsLeftOutIsNamedWithItsReason) {
  begin_shop();
  mark(650, job::DefectKind::RunOrSag);
  mark(600, job::DefectKind::SolventPop);
  make();
  ASSERT_EQ(plan_->leftOutCount(), 2);
  EXPECT_EQ(at(plan_->leftOut(), 0, "title"), "Run or sag 3, hood");
  EXPECT_TRUE(at(plan_->leftOut(), 0, "canAdd").toBool());
  EXPECT_FALSE(at(plan_->leftOut(), 1, "canAdd").toBool());
  plan_->sayHard(true);
  settle();
  EXPECT_EQ(plan_->leftOutCount(), 1);
  EXPECT_EQ(plan_->mainText(), "Start: level 3 marks");
}

TEST_F(PlanScreen, TheStartAsksOnceFromWhenItMayBeSandedAndThenTheCheck) {
  begin_shop();
  make();
  const auto sand = heard(plan_.get(), &PlanViewModel::sandAsked);
  const auto check = heard(plan_.get(), &PlanViewModel::beforeCutAsked);
  const auto walk = heard(plan_.get(), &PlanViewModel::walkAsked);
  plan_->begin();
  EXPECT_EQ(*sand, 1);
  EXPECT_FALSE(plan_->sayFrom("soon", false));
  EXPECT_NE(plan_->refusal(), "");
  plan_->saySheetAllows();
  plan_->begin();
  EXPECT_EQ(*check, 1);
  answer_before_cut();
  plan_->begin();
  settle();
  EXPECT_EQ(*walk, 1);
  EXPECT_EQ(*sand, 1);
  ASSERT_EQ(car().running.size(), 1U);
  EXPECT_EQ(car().find(car().running.front().operation)->stage, job::Stage::Correct);
}

TEST_F(PlanScreen, BeforeTheTimeTheWalkDoesNotBegin) {
  begin_shop();
  act(acts::NameShop{"", "UTC"});
  answer_before_cut();
  make();
  const auto walk = heard(plan_.get(), &PlanViewModel::walkAsked);
  ASSERT_TRUE(plan_->sayFrom("14:30", false));  // it is 14:13
  plan_->begin();
  EXPECT_EQ(*walk, 0);
  EXPECT_EQ(plan_->refusal(), "Not yet. Sand from 14:30.");
  EXPECT_TRUE(car().running.empty());
  clock_.moment.wall_ms += 20 * 60'000;
  plan_->begin();
  EXPECT_EQ(*walk, 1);
}

TEST_F(PlanScreen, ChoicesAreKeptWithTheCar) {
  begin_shop();
  make();
  plan_->goByPanel(true);
  plan_->saySheetAllows();
  plan_->proveStart("nib", static_cast<int>(job::Round::Compound));
  settle();
  EXPECT_EQ(plan_->rounds()->rowCount(), 3);
  plan_.reset();
  work_.reset();
  make();
  EXPECT_TRUE(plan_->byPanel());
  EXPECT_EQ(work_->sand(), CorrectionWork::Sand::SheetAllows);
  EXPECT_EQ(plan_->mainText(), "Start: compound 2 marks");
  plan_->proveStart("nib", -1);
  settle();
  EXPECT_EQ(plan_->rounds()->rowCount(), 5);
}

}  // namespace
}  // namespace jambline::screens
