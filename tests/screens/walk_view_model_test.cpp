#include "screens/walk_view_model.h"

#include "tests/screens/correct_desk.h"

namespace jambline::screens {
namespace {
using WalkMode = WalkViewModel::Mode;

class WalkScreen : public CorrectDesk {
 protected:
  void make() {
    begin_shop();
    answer_before_cut();
    again();
    plan_->saySheetAllows();
    plan_->begin();
    settle();
  }
  void again() {
    drop();
    work_ = std::make_unique<CorrectionWork>(*session_);
    plan_ = std::make_unique<PlanViewModel>(*session_, *work_);
    walk_ = std::make_unique<WalkViewModel>(*session_, *work_);
    settle();
  }
  void drop() {
    walk_.reset();
    plan_.reset();
    work_.reset();
  }
  void TearDown() override {
    drop();
    ShopDesk::TearDown();
  }
  void main_act(int minutes = 0) {
    clock_.advance_ms(minutes * 60'000);
    walk_->act();
    settle();
  }
  void all_rounds() {
    for (int i = 0; i < 5; ++i) main_act(1);
    ASSERT_EQ(walk_->mode(), WalkMode::Ask);
  }
  QString key(int row) { return at(walk_->marks(), row, "key").toString(); }

  std::unique_ptr<CorrectionWork> work_;
  std::unique_ptr<PlanViewModel> plan_;
  std::unique_ptr<WalkViewModel> walk_;
};

TEST_F(WalkScreen, OneTapARoundFromThePlanToClean) {
  make();
  const auto ended = heard(walk_.get(), &WalkViewModel::ended);
  EXPECT_EQ(walk_->mainText(), "Level done: 2 marks");
  EXPECT_EQ(walk_->where(), "round 1 of 5");
  for (const char* next : {"Refine", "Compound", "Polish", "Finish"}) {
    main_act(2);
    EXPECT_EQ(walk_->mainText(), QString("%1 done: 2 marks").arg(next));
  }
  main_act(2);
  ASSERT_EQ(walk_->mode(), WalkMode::Ask);
  EXPECT_EQ(walk_->mainText(), "All gone: 2 marks");
  main_act();
  ASSERT_EQ(walk_->mode(), WalkMode::Clean);
  EXPECT_EQ(walk_->mainText(), "Clean: hood");
  main_act();
  EXPECT_EQ(hood().verdict, job::Verdict::Clean);
  EXPECT_EQ(walk_->mode(), WalkMode::Nothing);
  EXPECT_EQ(*ended, 1);
  ASSERT_EQ(hood().rounds.size(), 5U);
  for (const auto& round : hood().rounds) {
    EXPECT_EQ(round.marks.size(), 2U);
    EXPECT_DOUBLE_EQ(round.work_min.value_or(-1), 2.0);  // as the clock ran
  }
  EXPECT_FALSE(failed_);
}

TEST_F(WalkScreen, WhatIsWrittenOfARoundIsWhatThePlanSaysOfItsAreas) {
  make();
  main_act(1);
  const auto of = folds::plan_of_car(car(), {}, {});
  ASSERT_TRUE(of);
  const auto result = trade::correction_plan(of->plan);
  ASSERT_TRUE(result);
  double area_mm2 = 0;
  for (const auto& area : result->stations.front().areas) area_mm2 += area.area_mm2;
  ASSERT_EQ(hood().rounds.size(), 1U);
  EXPECT_EQ(hood().rounds.front().areas, static_cast<int>(result->stations.front().areas.size()));
  EXPECT_DOUBLE_EQ(hood().rounds.front().area_mm2, area_mm2);
}

TEST_F(WalkScreen, ASkippedRoundIsWrittenAsSkippedAndAnAddedOneAsAdded) {
  make();
  walk_->skip();
  settle();
  EXPECT_EQ(walk_->mainText(), "Refine done: 2 marks");
  walk_->add(static_cast<int>(job::Round::Level));
  settle();
  ASSERT_EQ(hood().rounds.size(), 2U);
  EXPECT_EQ(hood().rounds[0].how, job::RoundHow::Skipped);
  EXPECT_FALSE(hood().rounds[0].work_min);
  EXPECT_EQ(hood().rounds[1].how, job::RoundHow::Added);
  EXPECT_EQ(hood().rounds[1].round, job::Round::Level);
  EXPECT_EQ(walk_->mainText(), "Refine done: 2 marks");
}

TEST_F(WalkScreen, AMarkThatCameBackIsWorkedOnAgainAndTheOtherIsGone) {
  make();
  all_rounds();
  plan_->proveStart("nib", static_cast<int>(job::Round::Polish));
  settle();
  walk_->cameBack(key(0));
  settle();
  walk_->gone(key(0));
  settle();
  EXPECT_EQ(walk_->mode(), WalkMode::Round);
  EXPECT_EQ(walk_->mainText(), "Polish done: 1 mark");
  main_act(1);
  main_act(1);
  EXPECT_EQ(walk_->mainText(), "All gone: 1 mark");
  main_act();
  EXPECT_EQ(walk_->mainText(), "Clean: hood");
}

TEST_F(WalkScreen, ABurnThroughStopsThePanelAndTakesItsOfferBack) {
  make();
  all_rounds();
  act(acts::OfferRelease{car().job, std::nullopt, job::Role::BodyTechnician, std::nullopt});
  walk_->burnThrough(key(0));
  settle();
  EXPECT_EQ(hood().verdict, job::Verdict::Redo);
  EXPECT_EQ(hood().marks.front().end, job::MarkEnd::BurnThrough);
  EXPECT_EQ(car().car_release.state, folds::ReleaseState::Returned);
  EXPECT_EQ(car().car_release.reason, "burn-through, goes to redo");
  EXPECT_EQ(walk_->told(), "Stop on the hood. It goes to redo. The offer is taken back.");
  EXPECT_EQ(walk_->mode(), WalkMode::Nothing);
  EXPECT_FALSE(failed_);
}

TEST_F(WalkScreen, WhoTookTheCarIsNamedSoThatHeIsTold) {
  make();
  const auto jo = add("Jo", job::Role::BodyTechnician);
  act(acts::OfferRelease{car().job, std::nullopt, job::Role::BodyTechnician, std::nullopt});
  be(jo);
  act(acts::TakeRelease{car().job, car().car_release.release});
  be(ivo_);
  walk_->burnThrough(key(0));
  settle();
  EXPECT_TRUE(walk_->told().contains("Jo has it: tell Jo."));
}

TEST_F(WalkScreen, GoesOnWhereItWasAfterARestart) {
  make();
  main_act(1);
  drop();
  const QString job = QString::fromStdString(car().job.hex());
  close();
  open();
  be(ivo_);
  session_->openCar(job);
  settle();
  again();
  EXPECT_EQ(walk_->mainText(), "Refine done: 2 marks");
  EXPECT_EQ(work_->sand(), CorrectionWork::Sand::SheetAllows);
}

TEST_F(WalkScreen, PanelByPanelEachIsAskedBeforeTheNextBegins) {
  make();
  mark(700, job::DefectKind::Haze, job::Panel::FrontBumper);
  plan_->goByPanel(true);
  settle();
  int rounds = 0;
  while (walk_->mode() == WalkMode::Round && rounds < 9) {
    main_act(1);
    ++rounds;
  }
  EXPECT_TRUE(rounds == 5 || rounds == 1) << rounds;
  EXPECT_EQ(walk_->mode(), WalkMode::Ask);
  const int first = walk_->marks()->rowCount();
  main_act();
  EXPECT_EQ(walk_->mode(), WalkMode::Round);
  EXPECT_EQ(first, rounds == 5 ? 2 : 1);
}

TEST_F(WalkScreen, WithoutAClockNoMinutesAreWritten) {
  make();
  act(acts::StopClock{ivo_});
  again();
  main_act(4);
  ASSERT_EQ(hood().rounds.size(), 1U);
  EXPECT_FALSE(hood().rounds.front().work_min);
}

TEST_F(WalkScreen, AfterAssemblyMarksOfHandlingAreToldApart) {
  begin_shop();
  act(acts::PlanOperation{car().job, {job::Stage::Assemble, "", 60}});
  act(acts::FinishStage{car().job, job::Stage::Assemble, true, job::WithoutShots::NoCamera});
  mark(600, job::DefectKind::HandlingScratch);
  again();
  EXPECT_EQ(work_->stage(), job::Stage::LastPolish);
  EXPECT_EQ(plan_->title(), "Last polish");
  EXPECT_TRUE(plan_->advice().join(' ').contains("No wax"));
  plan_->proveStart("nib", static_cast<int>(job::Round::Polish));
  settle();
  ASSERT_EQ(walk_->marks()->rowCount(), 3);
  EXPECT_FALSE(at(walk_->marks(), 0, "place").toString().contains("handling"));
  EXPECT_TRUE(at(walk_->marks(), 2, "place").toString().contains("from handling"));
  answer_before_cut();
  main_act();
  EXPECT_EQ(hood().rounds.back().stage, job::Stage::LastPolish);
}

}  // namespace
}  // namespace jambline::screens
