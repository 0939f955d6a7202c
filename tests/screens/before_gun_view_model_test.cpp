// Before the gun, as the screen asks it. Items and their class: 29 CFR 1910.134, 1910.94(c) and
// 1910.107, 40 CFR 63 subpart HHHHHH; which of them are of now: common practice, no source.
#include "screens/car_view_model.h"
#include "tests/screens/gun_desk.h"

namespace jambline::screens {
namespace {

using folds::BoothWordNow;
using job::GunItem;

class BeforeGunScreen : public GunDesk {};

TEST_F(BeforeGunScreen, AGoodDayIsFiveAnswersAndTheStart) {
  register_everything();
  BeforeGunViewModel screen(*session_);
  QString started;
  QObject::connect(&screen, &BeforeGunViewModel::started, &screen,
                   [&](const QString& booth) { started = booth; });
  screen.open({});
  EXPECT_EQ(screen.boothWords(), "Booth 1") << "nothing is sprayed in the mixing room";
  EXPECT_EQ(screen.boothNote(), "booth");
  EXPECT_EQ(screen.respiratorWords(), "hood 7");
  EXPECT_EQ(screen.leftWords(), "5 left");
  EXPECT_EQ(screen.asked()->rowCount(), 5);
  for (int row = 0; row < 5; ++row) EXPECT_EQ(cell(screen.asked(), row, "answerWords"), "");
  EXPECT_EQ(of(screen.known(), key(GunItem::BreathingAir), "words"), "checked Sep 11, due Dec 10");
  EXPECT_TRUE(screen.mainWaits());
  answer_now(screen);
  EXPECT_EQ(screen.leftWords(), "");
  EXPECT_FALSE(screen.mainWaits());
  screen.start();
  settle();
  EXPECT_EQ(booth_now(), BoothWordNow::Spraying);
  EXPECT_EQ(started.toStdString(), booth_.hex());
  EXPECT_EQ(car().booth, booth_) << "it was sprayed there";
  ASSERT_EQ(car().running.size(), 1U) << "and the clock is on the spraying";
  EXPECT_TRUE(car().air.sprays.back().activated) << "without a mix it counts as activated";
  EXPECT_EQ(screen.leftWords(), "5 left") << "nothing of it holds for the next time";
  EXPECT_EQ(screen.boothNote(), "Spraying, stay out");
  EXPECT_FALSE(failed_);
}

TEST_F(BeforeGunScreen, AStopThatIsNotMetHasNoWayRoundAndCanOnlyBeReported) {
  register_everything();
  BeforeGunViewModel screen(*session_);
  screen.open({});
  answer_now(screen);
  say(screen, GunItem::ExhaustFreshAir, "No: do not spray");
  EXPECT_TRUE(screen.stopped());
  EXPECT_EQ(screen.mainText(), "Do not spray");
  EXPECT_EQ(of(screen.stops(), key(GunItem::ExhaustFreshAir), "words"),
            "Switch the exhaust on, on fresh air, doors shut.");
  screen.openItem(key(GunItem::ExhaustFreshAir));
  EXPECT_EQ(screen.openAnswers(), QStringList({"Yes, now", "No: do not spray"}));
  EXPECT_FALSE(screen.openTakesNote());
  screen.start();
  settle();
  EXPECT_EQ(booth_now(), BoothWordNow::Idle);
  screen.report();
  settle();
  ASSERT_EQ(car().air.without.size(), 1U);
  EXPECT_EQ(car().air.without.front().items, std::vector{GunItem::ExhaustFreshAir});
  EXPECT_TRUE(car().air.sprays.empty());
  EXPECT_NE(screen.reportedWords(), "");
}

TEST_F(BeforeGunScreen, AMustIsPassedOverByNameReasonAndNote) {
  register_everything();
  BeforeGunViewModel screen(*session_);
  screen.open({});
  answer_now(screen);
  say(screen, GunItem::GlovesSuitEyes, "Go on without: none at hand", " suit is torn ");
  EXPECT_TRUE(screen.openWho().contains("Ivo"));
  EXPECT_EQ(of(screen.asked(), key(GunItem::GlovesSuitEyes), "answerWords"),
            "Ivo goes on without: none at hand");
  screen.start();
  settle();
  const auto& checks = car().air.sprays.back().checks;
  const auto passed = std::find_if(checks.begin(), checks.end(),
                                   [](const auto& one) { return one.reason.has_value(); });
  ASSERT_NE(passed, checks.end());
  EXPECT_EQ(passed->item, GunItem::GlovesSuitEyes);
  EXPECT_EQ(passed->reason, job::GunReason::NoneAtHand);
  EXPECT_EQ(passed->note, "suit is torn");
  SprayedViewModel sprayed(*session_);
  EXPECT_EQ(cell(sprayed.sprays(), 0, "lines").toStringList().join("|"),
            "Ivo went on without gloves, suit, eyes: none at hand, \u201csuit is torn\u201d");
}

TEST_F(BeforeGunScreen, WhatNoRecordBearsOutIsAskedAndNeverAPlainYes) {
  BeforeGunViewModel screen(*session_);
  screen.open({});
  answer_now(screen);
  EXPECT_EQ(screen.leftWords(), "3 left");
  screen.press(key(GunItem::BreathingAir));
  EXPECT_FALSE(screen.openAnswers().contains("Yes, now"));
  EXPECT_EQ(screen.openAnswers().size(), 4);
  for (const auto item : {GunItem::BreathingAir, GunItem::TrainedAndGun, GunItem::FiltersAndGauge})
    say(screen, item, "Go on without: record is not here");
  EXPECT_FALSE(screen.mainWaits());
  be(mara_);
  act(acts::SayDoNotSpray{ivo_});
  be(ivo_);
  EXPECT_TRUE(screen.stopped());
  EXPECT_EQ(of(screen.stops(), key(GunItem::MaySpray), "words"),
            "Ivo does not spray. Only a manager takes that back.");
  screen.openItem(key(GunItem::MaySpray));
  EXPECT_TRUE(screen.openAnswers().isEmpty());
}

TEST_F(BeforeGunScreen, AnExpiredFitTestIsAMustWithItsDay) {
  register_everything();
  be(mara_);
  const RespiratorId mask = respirator("airline 3", job::RespiratorKind::SuppliedFull);
  act(acts::RecordFitTest{ivo_,
                          mask,
                          {"M",
                           job::FitMethod::Quantitative,
                           {1000, 800, 400, 900, 700, 650, 500},
                           false,
                           today() - 366,
                           365}});
  be(ivo_);
  BeforeGunViewModel screen(*session_);
  screen.open({});
  screen.chooseRespirator(QString::fromStdString(mask.hex()));
  EXPECT_EQ(of(screen.asked(), key(GunItem::FitTested), "words"),
            "fit test Sep 20, 2025, was due Sep 20");
  EXPECT_EQ(of(screen.asked(), key(GunItem::SealOrFlow), "title"), "Shaved, seal checked");
  screen.chooseRespirator(QString::fromStdString(hood_.hex()));
  EXPECT_EQ(of(screen.asked(), key(GunItem::SealOrFlow), "title"), "Air hood flow checked");
  EXPECT_FALSE(of(screen.asked(), key(GunItem::FitTested), "words").isValid());
}

TEST_F(BeforeGunScreen, AnswersAreNobodysWhenWhoWhereOrThroughWhatChangesOrTimePasses) {
  register_everything();
  be(mara_);
  const RespiratorId other = respirator("hood 8", job::RespiratorKind::SuppliedHood);
  be(ivo_);
  BeforeGunViewModel screen(*session_);
  screen.open({});
  screen.chooseRespirator(QString::fromStdString(hood_.hex()));
  answer_now(screen);
  screen.chooseRespirator(QString::fromStdString(other.hex()));
  EXPECT_EQ(screen.leftWords(), "1 left") << "its airflow is checked anew";
  answer_now(screen);
  EXPECT_EQ(screen.leftWords(), "");
  be(mara_);
  EXPECT_EQ(screen.title(), "Before the gun, Mara");
  EXPECT_EQ(screen.respiratorWords(), "");
  EXPECT_TRUE(screen.mainText().contains("4 stops"));
  be(ivo_);
  screen.chooseRespirator(QString::fromStdString(other.hex()));
  answer_now(screen);
  EXPECT_EQ(screen.leftWords(), "");
  wait_min(16);
  emit session_->secondPassed();
  EXPECT_EQ(screen.leftWords(), "5 left");
  answer_now(screen);
  screen.open({});
  EXPECT_EQ(screen.leftWords(), "5 left");
}

TEST_F(BeforeGunScreen, TheRespiratorOfTheLastTimeIsThereAgain) {
  register_everything();
  be(mara_);
  const RespiratorId other = respirator("hood 8", job::RespiratorKind::SuppliedHood);
  be(ivo_);
  {
    BeforeGunViewModel screen(*session_);
    screen.open({});
    EXPECT_EQ(screen.respiratorWords(), "") << "of two none is guessed";
    screen.openNext();
    EXPECT_TRUE(screen.mainWaits());
    screen.chooseRespirator(QString::fromStdString(other.hex()));
    answer_now(screen);
    screen.start();
    settle();
    act(acts::GunDown{booth_});
  }
  open_spray_car(job::Drive::Combustion);
  BeforeGunViewModel screen(*session_);
  EXPECT_EQ(screen.respiratorWords(), "hood 8");
}

TEST_F(BeforeGunScreen, WhatIsMixedSaysWhetherItIsActivated) {
  register_everything();
  be(mara_);
  const RespiratorId mask = respirator("mask 1", job::RespiratorKind::HalfAirPurifying);
  be(ivo_);
  const ProductId base = product("base A", job::ProductKind::Base, false);
  const ProductId clear = product("clear A", job::ProductKind::Clear, true);
  BeforeGunViewModel screen(*session_);
  screen.open({});
  screen.chooseRespirator(QString::fromStdString(mask.hex()));
  EXPECT_TRUE(screen.stopped()) << "activated until somebody says otherwise";
  act(acts::MixProduct{car().job, base, "1", true});
  EXPECT_FALSE(screen.activated());
  EXPECT_FALSE(screen.stopped());
  act(acts::MixProduct{car().job, clear, "2"});
  EXPECT_TRUE(screen.activated()) << "one of two is enough";
  EXPECT_TRUE(screen.stopped());
  EXPECT_EQ(screen.productWords(), "base A, clear A: activated, holds isocyanate");
  screen.sayActivated(false);
  EXPECT_TRUE(screen.stopped()) << "a mix is not talked away";
  screen.flipMix(QString::fromStdString(car().air.mixes.back().mix.hex()));
  EXPECT_FALSE(screen.stopped()) << "only the base is sprayed now";
  screen.flipMix(QString::fromStdString(car().air.mixes.front().mix.hex()));
  EXPECT_TRUE(screen.stopped()) << "none chosen counts as all";
}

TEST_F(BeforeGunScreen, AColorThatIsNotApprovedIsAMust) {
  register_everything();
  const ProductId base = product("base A", job::ProductKind::Base, false);
  act(acts::MixProduct{car().job, base, "1", false});
  BeforeGunViewModel screen(*session_);
  screen.open({});
  EXPECT_EQ(of(screen.asked(), key(GunItem::ColorApproved), "words"), "spray-out not approved yet");
}

TEST_F(BeforeGunScreen, WithoutAnyRespiratorInTheShopNobodySprays) {
  register_everything();
  be(mara_);
  auto gone = session_->shop().air.respirators.front().said;
  gone.retired = true;
  act(acts::SetRespirator{hood_, gone});
  be(ivo_);
  BeforeGunViewModel screen(*session_);
  screen.open({});
  answer_now(screen);
  EXPECT_TRUE(screen.mainWaits());
  screen.start();
  settle();
  EXPECT_EQ(booth_now(), BoothWordNow::Idle);
}

TEST_F(BeforeGunScreen, TheCarsMainActLeadsHereUntilItIsSprayed) {
  register_everything();
  CarViewModel screen(*session_);
  int asked = 0;
  QObject::connect(&screen, &CarViewModel::beforeGunAsked, &screen, [&] { ++asked; });
  EXPECT_EQ(screen.mainText(), "Before the gun");
  screen.act();
  settle();
  EXPECT_EQ(asked, 1);
  EXPECT_EQ(car().running.size(), 1U);
  BeforeGunViewModel gun(*session_);
  gun.open({});
  answer_now(gun);
  gun.start();
  settle();
  EXPECT_EQ(screen.mainAct(), CarViewModel::Act::Finish);
}

}  // namespace
}  // namespace jambline::screens
