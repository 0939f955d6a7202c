// The cure clock on the screen. Times of day: the desk's clock stands at 14:13:20 UTC.
#include "screens/cure_view_model.h"

#include "screens/car_view_model.h"
#include "screens/floor_view_model.h"
#include "screens/parts_view_model.h"
#include "tests/screens/cure_desk.h"

namespace jambline::screens {
namespace {

class CureScreen : public CureDesk {};

TEST_F(CureScreen, SaysWhatStartsTheClock) {
  worked_out();
  EXPECT_EQ(cure_->clockCount(), 0);
  EXPECT_TRUE(cure_->emptyWords().startsWith("Nothing sprayed is logged"));
  EXPECT_EQ(cure_->mainText(), "Mix and coats");
  spray(product(clear()));
  EXPECT_EQ(cure_->emptyWords(), "");
  EXPECT_EQ(cure_->clockCount(), 2) << "one a group of panels";
  EXPECT_EQ(cure_->mainText(), "Log panel temperature");
  EXPECT_EQ(at(cure_->clocks(), 0, "note").toString(),
            "No panel temperature yet: nothing is counted.");
  EXPECT_EQ(says(0, "pull tape"), "not counted");
  EXPECT_EQ(says(0, "pull tape", "sheet"), "sheet: 1 h at 20 °C, 15 min at 60 °C");
  EXPECT_EQ(says(0, "pot life"), "") << "that is the mix's";
}

// By hand, ln(t) straight over 1/T between 60 minutes at 20 C and 15 at 60 C: 55.5 minutes at 22 C,
// 51.4 at 24 C, 60 at 20 C; the desk's clock stands at 14:13:20.
TEST_F(CureScreen, SaysReachedOrAboutWhenWithASpan) {
  spray(product(clear()));
  read(job::PanelGroup::Roof, 22);
  EXPECT_EQ(says(0, "pull tape"), "not yet, about 15:10 (15:00 to 15:15)");
  EXPECT_EQ(says(0, "pull tape", "shape").toInt(), shape_of(StateKind::NotYet));
  read(job::PanelGroup::Low, 20);
  EXPECT_EQ(says(1, "pull tape"), "not yet, about 15:15, later where it is colder");
  wait_min(56);
  EXPECT_EQ(says(0, "pull tape"), "reached 15:08");
  EXPECT_EQ(says(0, "pull tape", "shape").toInt(), shape_of(StateKind::Done));
  EXPECT_TRUE(says(0, "polish until").startsWith("until about "));
  EXPECT_EQ(cure_->rowWords(), "Rockers and low sides, pull tape: about 15:15");
}

TEST_F(CureScreen, AMilestoneCountsDownInItsLastHalfHour) {
  spray(product(clear()));
  read(job::PanelGroup::Roof, 22);  // pull tape after 55.5 minutes
  wait_min(20);
  EXPECT_TRUE(cure_->countdowns().empty());
  wait_min(10);
  ASSERT_EQ(cure_->countdowns().size(), 1U);
  EXPECT_EQ(cure_->countdowns()[0].margin, "K 41-206 roof and hood, pull tape about 15:10");
  EXPECT_NEAR(cure_->countdowns()[0].left_s, 25.5 * 60, 30);
  clock_.advance_ms(30 * 60'000);  // nothing was worked out since
  EXPECT_EQ(cure_->countdowns()[0].left_s, 0);
  wait_min(1);
  EXPECT_TRUE(cure_->countdowns().empty());
}

TEST_F(CureScreen, TooHotRestAndThumbnailHoldItBack) {
  spray(product(clear()));
  act(acts::SayBake{car().job, true});
  read(job::PanelGroup::Roof, 60);
  wait_min(50);
  EXPECT_EQ(says(0, "sand from"), "too hot to touch: 60 °C, at most 30 °C");
  EXPECT_EQ(at(cure_->clocks(), 0, "lineWords").toString(),
            "60 °C to 60 °C since the coat; dashed: at most 30 °C to touch it");
  EXPECT_EQ(at(cure_->clocks(), 0, "line").toList(), (QVariantList{0.0, 1.0, 1.0, 1.0}));
  EXPECT_EQ(at(cure_->clocks(), 0, "limit").toDouble(), 0);
  act(acts::SayBake{car().job, false});
  wait_min(5);
  EXPECT_EQ(at(cure_->clocks(), 0, "note").toString(),
            "Read it again: it has cooled since. 20 °C is counted.");
  read(job::PanelGroup::Roof, 25);
  EXPECT_TRUE(says(0, "sand from").startsWith("waits: rest after the bake until 16:"))
      << says(0, "sand from").toStdString();
  wait_min(60);
  EXPECT_TRUE(says(0, "sand from").startsWith("reached ")) << says(0, "sand from").toStdString();
  ASSERT_TRUE(at(cure_->clocks(), 0, "asksThumbnail").toBool());
  cure_->checkThumbnail(at(cure_->clocks(), 0, "key").toString(), false);
  worked_out();
  EXPECT_EQ(says(0, "sand from"), "waits: the thumbnail said not yet");
  cure_->checkThumbnail(at(cure_->clocks(), 0, "key").toString(), true);
  worked_out();
  EXPECT_TRUE(says(0, "sand from").startsWith("reached "));
  EXPECT_FALSE(at(cure_->clocks(), 0, "asksThumbnail").toBool());
}

TEST_F(CureScreen, WhatWasSoftOnOneCarTakesLongerOnTheNext) {
  const ProductId with = product(clear());
  spray(with);
  read(job::PanelGroup::Roof, 20);
  wait_min(1200);
  cure_->checkThumbnail(at(cure_->clocks(), 0, "key").toString(), false);
  worked_out();
  EXPECT_EQ(says(0, "sand from", "sheet"), "sheet: 16 h at 20 °C, 45 min at 60 °C")
      << "the car itself is held by the check";
  open_car();
  spray(with);
  read(job::PanelGroup::Roof, 20);
  worked_out();
  EXPECT_EQ(says(0, "sand from", "sheet"),
            "sheet: 16 h at 20 °C, 45 min at 60 °C. Taken 1.25 times as long: on the last car "
            "checked it was still soft then.");
  EXPECT_FALSE(says(0, "pull tape", "sheet").contains("Taken"));
  wait_min(1000);
  EXPECT_FALSE(says(0, "sand from").startsWith("reached"));
  wait_min(250);
  EXPECT_TRUE(says(0, "sand from").startsWith("reached ")) << says(0, "sand from").toStdString();
}

// Nobody read it after the bake: it may be hot still.
TEST_F(CureScreen, WhatWasHotAndNotReadAgainIsNotCalledReached) {
  spray(product(clear()));
  read(job::PanelGroup::Roof, 60);
  wait_min(59);
  wait_min(10);
  EXPECT_EQ(says(0, "sand from"), "read the panel again: it was 60 °C");
}

TEST_F(CureScreen, ColderThanItCuresStandsStill) {
  spray(product(clear()));
  read(job::PanelGroup::Roof, 8);
  EXPECT_EQ(says(0, "sand from"), "stalled: colder than it cures");
  EXPECT_EQ(at(cure_->clocks(), 0, "note").toString(),
            "Colder than it cures: 10 °C at least. It stands still.");
  wait_min(1);
  read(job::PanelGroup::Roof, 15);
  wait_min(1);
  EXPECT_EQ(says(0, "sand from"), "stalled: colder than the sheet's points");
}

TEST_F(CureScreen, UvHasNoClockAndTheSheetsWordsHold) {
  auto uv = clear();
  uv.cure = trade::CureKind::Uv;
  spray(product(uv));
  read(job::PanelGroup::Roof, 20);
  EXPECT_EQ(at(cure_->clocks(), 0, "note").toString(),
            "UV: no heat clock. The words of its sheet hold.");
  EXPECT_EQ(says(0, "sand from"), "no clock: the sheet's words hold");
  EXPECT_EQ(says(0, "sand from", "sheet"), "sheet: 16 h at 20 °C, 45 min at 60 °C");
}

TEST_F(CureScreen, TemperaturesAreLoggedGroupByGroup) {
  spray(product(clear()));
  const auto all = heard(cure_.get(), &CureViewModel::allRead);
  cure_->startReading();
  EXPECT_EQ(cure_->groupTitle(), "Roof and hood");
  EXPECT_EQ(cure_->logWords(41, false), "Log 41 °C");
  cure_->logTemperature(200, false);
  worked_out();
  EXPECT_EQ(cure_->refusal(), "No panel is 200 °C. It takes \u221220 °C to 150 °C.");
  EXPECT_TRUE(car().air.temperatures.empty());
  cure_->logTemperature(41, false);
  worked_out();
  ASSERT_EQ(car().air.temperatures.size(), 1U);
  EXPECT_EQ(car().air.temperatures[0].surface_c, 41);
  EXPECT_EQ(cure_->groupTitle(), "Rockers and low sides");
  EXPECT_EQ(*all, 0);
  session_->set_units(Units::Us);
  settle();
  EXPECT_EQ(cure_->logWords(104, false), "Log 104 °F");
  cure_->logTemperature(104, false);
  worked_out();
  EXPECT_NEAR(car().air.temperatures[1].surface_c, 40, 1e-9);
  EXPECT_EQ(*all, 1);
}

TEST_F(CureScreen, TwoMixesHaveTwoClocksAndWhatIsCoveredHasNone) {
  const auto with = product(clear());
  spray(with);
  read(job::PanelGroup::Roof, 20);
  wait_min(100);
  act(acts::MixProduct{car().job, with, "78", true, {}, {}});
  act(acts::SayCoats{
      car().job, car().air.mixes.back().mix, {job::Panel::FrontBumper}, 2, {8}, "1.3 mm", false});
  worked_out();
  ASSERT_EQ(cure_->clockCount(), 2) << "the first coat of the bumper lies under the second one";
  EXPECT_EQ(at(cure_->clocks(), 0, "panels").toString(), "front bumper cover");
  EXPECT_EQ(says(0, "pull tape"), "not counted") << "nothing was read since its coat";
  EXPECT_EQ(at(cure_->clocks(), 1, "panels").toString(), "hood");
  EXPECT_TRUE(says(1, "pull tape").startsWith("reached"));
  EXPECT_FALSE(cure_->openSum(at(cure_->clocks(), 0, "key").toString()));
  ASSERT_TRUE(cure_->openSum(at(cure_->clocks(), 1, "key").toString()));
  EXPECT_TRUE(cure_->sum()->figure().startsWith("Sand from: not yet, about "));
}

TEST_F(CureScreen, ALoosePartIsHungAndNotStackedBeforeItCanBeHandled) {
  PartsViewModel parts(*session_);
  parts.follow_cure(*work_);
  auto with = clear();
  with.steps.push_back({trade::CureMilestone::Handle, {{20, 480}}});
  spray(product(with));
  EXPECT_EQ(at(parts.parts(), 0, "place").toString(), "not clean yet") << "nothing was read";
  read(job::PanelGroup::Low, 20);
  EXPECT_EQ(
      at(parts.parts(), 0, "place").toString(),
      "not clean yet \u00b7 hang it, do not stack it: handle not yet, about 22:15, later where "
      "it is colder");
  wait_min(490);
  EXPECT_EQ(at(parts.parts(), 0, "place").toString(), "not clean yet");
}

class GlassScreen : public CureDesk {
 protected:
  void set_windshield() {
    glass_ = product(urethane());
    bond_ = std::make_unique<BondViewModel>(*session_);
    bond_->start();
    bond_->sayPart("windshield");
    bond_->chooseProduct(QString::fromStdString(glass_.hex()));
  }
  void TearDown() override {
    bond_.reset();
    CureDesk::TearDown();
  }
  ProductId glass_;
  std::unique_ptr<BondViewModel> bond_;
};

TEST_F(GlassScreen, AsksForTheCaseAndSaysDoNotDriveEverywhere) {
  set_windshield();
  EXPECT_EQ(bond_->waits(), "choose the airbag and belt case");
  bond_->keep();
  worked_out();
  EXPECT_TRUE(car().air.bonds.empty());
  bond_->chooseCase("two bags");
  EXPECT_EQ(bond_->waits(), "");
  bond_->chooseAgo(2);
  const auto kept = heard(bond_.get(), &BondViewModel::kept);
  bond_->keep();
  worked_out();
  EXPECT_EQ(*kept, 1);
  // 480 minutes after 13:58:20.
  EXPECT_EQ(cure_->doNotDrive(), "Do not drive until 21:59");
  FloorViewModel floor(*session_);
  EXPECT_EQ(at(floor.rows(), 0, "held").toString(), "Do not drive until 21:59");
  EXPECT_EQ(at(cure_->bonds(), 0, "words").toString(), "Do not drive until 21:59");
  EXPECT_EQ(at(cure_->bonds(), 0, "note").toString(),
            "Air not logged: the longest time of the maker's table.");
  const auto air = heard(bond_.get(), &BondViewModel::airKept);
  bond_->logAir("21", "20", "a");
  EXPECT_EQ(bond_->humidityRefusal(), "It takes 1 to 100 %.");
  bond_->logAir("21", "20", "55");
  worked_out();
  EXPECT_EQ(*air, 1);
  EXPECT_EQ(cure_->doNotDrive(), "Do not drive until 14:59");
  ASSERT_TRUE(cure_->openBondSum(at(cure_->bonds(), 0, "key").toString()));
  EXPECT_EQ(cure_->sum()->figure(), "Do not drive until 14:59");
  bond_->logAir("2", "2", "55");
  worked_out();
  EXPECT_EQ(cure_->doNotDrive(), "Do not drive: no time from the maker's table");
  EXPECT_TRUE(at(cure_->bonds(), 0, "note").toString().startsWith("Colder or drier"));
}

TEST_F(GlassScreen, ATimeThatIsStillToComeIsRefusedAtTheField) {
  set_windshield();
  bond_->sayTime("15:40");
  EXPECT_EQ(bond_->timeRefusal(), "15:40 is still to come.");
  bond_->sayTime("soon");
  EXPECT_EQ(bond_->timeRefusal(), "That is no time: soon. Type it as 14:30.");
  bond_->sayTime("9:30");
  EXPECT_EQ(bond_->timeRefusal(), "");
  bond_->chooseCase("no bag");
  bond_->keep();
  worked_out();
  EXPECT_EQ(cure_->doNotDrive(), "") << "four hours after 9:30 have gone by";
  EXPECT_EQ(at(cure_->bonds(), 0, "words").toString(), "Its time of the maker's table is over");
}

TEST_F(GlassScreen, TheDeliveryWaitsAndIsRefusedUntilThen) {
  set_windshield();
  bond_->chooseCase("no bag");
  bond_->keep();
  worked_out();
  const folds::CarView before = car();
  for (const auto& panel : before.panels)
    act(acts::GiveVerdict{
        before.job, panel.plan.panel, job::Verdict::Clean, !panel.plan.on_car, {}});
  for (const auto& stage : before.stages)
    act(acts::FinishStage{before.job, stage.stage, true, job::WithoutShots::NoCamera});
  CorrectionWork correction(*session_);
  CarViewModel screen(*session_);
  screen.follow(correction);
  worked_out();
  ASSERT_EQ(screen.mainAct(), CarViewModel::Act::WalkAround);
  EXPECT_EQ(screen.mainSecond(), "Do not drive until 18:14");
  act(acts::Sign{car().job, job::SignedFor::Delivery, "Ana", {{{{0.1, 0.1}, {0.2, 0.2}}}}});
  act(acts::Deliver{car().job});
  ASSERT_TRUE(failed_);
  EXPECT_EQ(failed_->code, Code::NotYet);
  wait_min(241);
  EXPECT_EQ(screen.mainSecond(), "open points, signature, delivery");
  act(acts::Deliver{car().job});
  EXPECT_TRUE(car().delivered_ms);
}

class EarlyCut : public CureDesk {
 protected:
  void SetUp() override {
    CureDesk::SetUp();
    correction_ = std::make_unique<CorrectionWork>(*session_);
    correction_->follow_cure(*work_);
    plan_ = std::make_unique<PlanViewModel>(*session_, *correction_);
    walk_ = std::make_unique<WalkViewModel>(*session_, *correction_);
    spray(product(clear()));
    mark(500);
    mark(800);
    worked_out();
  }
  void TearDown() override {
    walk_.reset();
    plan_.reset();
    correction_.reset();
    CureDesk::TearDown();
  }
  std::unique_ptr<CorrectionWork> correction_;
  std::unique_ptr<PlanViewModel> plan_;
  std::unique_ptr<WalkViewModel> walk_;
};

TEST_F(EarlyCut, WithoutATemperatureAPersonSaysFromWhen) {
  EXPECT_FALSE(plan_->byClock());
  const auto asked = heard(plan_.get(), &PlanViewModel::sandAsked);
  plan_->begin();
  EXPECT_EQ(*asked, 1);
}

TEST_F(EarlyCut, NothingIsSandedBeforeSandFromUnlessTheReasonIsEntered) {
  answer_before_cut();
  read(job::PanelGroup::Roof, 20);
  EXPECT_TRUE(plan_->byClock());
  EXPECT_TRUE(plan_->sandWords().startsWith("Sand from, hood: not yet, about "))
      << plan_->sandWords().toStdString();
  const auto early = heard(plan_.get(), &PlanViewModel::earlyAsked);
  const auto walk = heard(plan_.get(), &PlanViewModel::walkAsked);
  plan_->begin();
  EXPECT_EQ(*early, 1);
  EXPECT_EQ(*walk, 0);
  EXPECT_TRUE(plan_->refusal().startsWith("Not yet. Sand from, hood:"));
  EXPECT_TRUE(walk_->mainWaits());
  walk_->act();
  worked_out();
  EXPECT_TRUE(hood().rounds.empty());

  plan_->sayEarly(3);
  worked_out();
  EXPECT_EQ(*walk, 1);
  EXPECT_FALSE(walk_->mainWaits());
  const auto& lines = *session_->snapshot().timeline;
  const auto* note = lines.back().payload.get_if<entries::NoteWritten>();
  for (const auto& line : lines)
    if (const auto* one = line.payload.get_if<entries::NoteWritten>()) note = one;
  ASSERT_TRUE(note);
  EXPECT_TRUE(
      QString::fromStdString(note->text).startsWith("Cut before its time. Sand from, hood"));
  EXPECT_TRUE(QString::fromStdString(note->text).endsWith("Reason: the manager decided."));
}

TEST_F(EarlyCut, TheCarSaysFromWhenItIsAssembled) {
  auto product = clear();
  product.product_name = "clear B";
  product.steps.push_back({trade::CureMilestone::Assemble, {{20, 600}}});
  spray(this->product(product));
  read(job::PanelGroup::Roof, 20);
  read(job::PanelGroup::Low, 20);
  act(acts::PlanOperation{car().job, {job::Stage::Assemble, "", 60}});
  CarViewModel screen(*session_);
  screen.follow(*correction_);
  screen.choose("assemble");
  worked_out();
  ASSERT_EQ(screen.mainText(), "Start assemble");
  // Ten hours after 14:13.
  EXPECT_EQ(screen.mainSecond(),
            "front bumper cover: not yet, about Tue 00:15, later where it is colder");
  wait_min(610);
  EXPECT_EQ(screen.mainSecond(), "1.0 h planned");
}

TEST_F(EarlyCut, WhenTheClockSaysReachedNobodyIsAskedForATime) {
  answer_before_cut();
  read(job::PanelGroup::Roof, 20);
  wait_min(970);
  EXPECT_EQ(plan_->sandWords(), "By the cure clock: its time has come on these panels");
  EXPECT_TRUE(plan_->windowWords().startsWith("Roof and hood, polish until about "))
      << plan_->windowWords().toStdString();
  const auto asked = heard(plan_.get(), &PlanViewModel::sandAsked);
  const auto walk = heard(plan_.get(), &PlanViewModel::walkAsked);
  plan_->begin();
  EXPECT_EQ(*asked, 0);
  EXPECT_EQ(*walk, 1);
}

}  // namespace
}  // namespace jambline::screens
