#include "screens/car_view_model.h"

#include "screens/act_words.h"
#include "tests/screens/shop_desk.h"

namespace jambline::screens {
namespace {

class CarScreen : public ShopDesk {
 protected:
  void finish(CarViewModel& screen, job::Stage stage) {
    act(acts::FinishStage{car().job, stage, true, job::WithoutShots::NoCamera});
    EXPECT_FALSE(failed_);
    EXPECT_TRUE(screen.here());
  }
  QVariant stage(CarViewModel& screen, int row, const char* role) {
    auto* rows = screen.stages();
    return rows->data(rows->index(row, 0), rows->roleNames().key(role));
  }
};

TEST_F(CarScreen, MainActIsNamedAfterWhatComesNext) {
  const auto ivo = add("Ivo", job::Role::Painter);
  be(ivo);
  open_car();
  CarViewModel screen(*session_);
  EXPECT_EQ(screen.mainText(), "Start prep");
  screen.act();
  settle();
  EXPECT_EQ(screen.mainText(), "Prep done");
  screen.finishWithout(0);
  settle();
  EXPECT_EQ(screen.mainText(), "Inspect");
  EXPECT_EQ(stage(screen, 0, "state").toInt(), static_cast<int>(CarViewModel::State::Done));
}

TEST_F(CarScreen, CautionsStandAboveTheStageThatTakesPartsOff) {
  be(add("Jo", job::Role::BodyTechnician));
  open_car();
  act(acts::PlanOperation{car().job, {job::Stage::Teardown, "", 30}});
  CarViewModel screen(*session_);
  screen.choose("prep");
  EXPECT_TRUE(screen.cautions().isEmpty());
  screen.choose("teardown");
  ASSERT_EQ(screen.cautions().size(), 2);
  EXPECT_TRUE(screen.cautions().front().contains("two people"));
}

TEST_F(CarScreen, DoneSaysThatItStopsTheOwnClockAndDoes) {
  be(add("Ivo", job::Role::Painter));
  open_car();
  CarViewModel screen(*session_);
  EXPECT_EQ(screen.stageTitle(), "Prep");
  ASSERT_EQ(screen.operations()->rowCount(), 1);
  EXPECT_EQ(screen.mainSecond(), "1.0 h planned");
  screen.act();
  settle();
  EXPECT_EQ(car().running.size(), 1U);
  EXPECT_EQ(screen.mainText(), "Prep done");
  EXPECT_TRUE(screen.mainSecond().startsWith("stops your clock"));
  screen.finishWithout(0);
  settle();
  EXPECT_TRUE(car().running.empty());
  EXPECT_TRUE(car().stages.front().done);
  EXPECT_EQ(words_of(*session_->snapshot().last_act, &car(), session_->shop()).done,
            "Prep done, clock stopped");
}

// Two shots a panel are wanted at prep (job/shot.h); the car has two panels.
TEST_F(CarScreen, WithPicturesMissingAStageIsDoneOnlyWithAReason) {
  be(add("Ivo", job::Role::Painter));
  open_car();
  CarViewModel screen(*session_);
  screen.act();
  settle();
  ASSERT_EQ(screen.mainAct(), CarViewModel::Act::Finish);
  EXPECT_EQ(screen.missingCount(), 4);
  EXPECT_EQ(screen.missingWords(), "4 pictures are missing");
  EXPECT_EQ(screen.missing()->rowCount(), 3);
  EXPECT_EQ(screen.missingMore(), "and 1 more");
  EXPECT_TRUE(screen.nextShotWords().endsWith(", guide coat"));
  int asked = 0;
  int finished = 0;
  QObject::connect(&screen, &CarViewModel::shotsMissing, &screen, [&] { ++asked; });
  QObject::connect(&screen, &CarViewModel::stageFinished, &screen, [&] { ++finished; });
  screen.act();
  settle();
  EXPECT_EQ(asked, 1);
  EXPECT_FALSE(car().stages.front().done);
  EXPECT_FALSE(failed_);
  ASSERT_EQ(screen.withoutReasons().size(), 4);
  EXPECT_EQ(screen.withoutReasons()[1], "Cannot be reached now");
  screen.finishWithout(1);
  settle();
  EXPECT_EQ(finished, 1);
  EXPECT_TRUE(car().stages.front().done);
  EXPECT_EQ(car().stages.front().without_shots, job::WithoutShots::NotReachable);
  EXPECT_EQ(car().stages.front().shots_missing, 4);
}

TEST_F(CarScreen, InspectIsAskedForAndItsClockRunsByTheSamePress) {
  const auto ivo = add("Ivo", job::Role::Painter);
  be(ivo);
  open_car();
  CarViewModel screen(*session_);
  finish(screen, job::Stage::Prep);
  int asked = 0;
  QObject::connect(&screen, &CarViewModel::inspectAsked, &screen, [&] { ++asked; });
  screen.act();
  EXPECT_EQ(asked, 1);
  settle();
  ASSERT_EQ(car().running.size(), 1U);
  EXPECT_EQ(car().running[0].person, ivo);
  EXPECT_EQ(car().find(car().running[0].operation)->stage, job::Stage::Inspect);
  const int entries = car().entries;
  screen.act();
  settle();
  EXPECT_EQ(asked, 2);
  EXPECT_EQ(car().entries, entries);
  EXPECT_FALSE(failed_);
}

TEST_F(CarScreen, NobodyChosenCanInspectButNotStartAClock) {
  add("Ivo", job::Role::Painter);
  add("Mara", job::Role::Manager);
  be({});
  open_car();
  CarViewModel screen(*session_);
  EXPECT_TRUE(screen.mainWaits());
  screen.act();
  settle();
  EXPECT_TRUE(car().running.empty());
  EXPECT_FALSE(failed_);
}

TEST_F(CarScreen, WithAllStagesDoneTheWalkAroundIsNextAndADeliveredCarCanComeBack) {
  be(add("Ivo", job::Role::Painter));
  open_car();
  CarViewModel screen(*session_);
  for (const auto stage : {job::Stage::Prep, job::Stage::Inspect, job::Stage::Correct})
    finish(screen, stage);
  EXPECT_EQ(screen.mainAct(), CarViewModel::Act::WalkAround);
  int asked = 0;
  QObject::connect(&screen, &CarViewModel::walkAroundAsked, &screen, [&] { ++asked; });
  screen.act();
  settle();
  EXPECT_EQ(asked, 1);
  EXPECT_FALSE(car().delivered_ms) << "open points are not signed for";
  for (const auto panel : {job::Panel::Hood, job::Panel::FrontBumper})
    act(acts::GiveVerdict{car().job, panel, job::Verdict::Clean, true, {}});
  act(acts::Sign{car().job, job::SignedFor::Delivery, "Ana", {{{{0.1, 0.1}, {0.2, 0.2}}}}});
  act(acts::Deliver{car().job});
  ASSERT_TRUE(car().delivered_ms);
  EXPECT_EQ(screen.mainAct(), CarViewModel::Act::ComeBack);
}

TEST_F(CarScreen, ATileTurnsTheMainActToItsStage) {
  be(add("Ivo", job::Role::Painter));
  open_car();
  CarViewModel screen(*session_);
  screen.choose("correct");
  EXPECT_EQ(screen.mainText(), "Start correct");
  screen.choose("correct");
  EXPECT_EQ(screen.mainText(), "Start prep");
  finish(screen, job::Stage::Prep);
  screen.choose("prep");
  EXPECT_EQ(screen.mainAct(), CarViewModel::Act::Reopen);
  screen.act();
  settle();
  EXPECT_EQ(screen.mainText(), "Start prep");
}

TEST_F(CarScreen, DueTimeIsLateOnceItIsOver) {
  open_car();
  CarViewModel screen(*session_);
  EXPECT_FALSE(screen.late());
  EXPECT_EQ(screen.heldBy(), "Held by: prep, then inspect");
  clock_.advance_ms(3 * 3'600'000);
  EXPECT_TRUE(screen.late());
}

TEST_F(CarScreen, NoteIsKeptAndSaid) {
  be(add("Ivo", job::Role::Painter));
  open_car();
  CarViewModel screen(*session_);
  int kept = 0;
  QObject::connect(&screen, &CarViewModel::noteKept, &screen, [&] { ++kept; });
  screen.writeNote("  ");
  settle();
  EXPECT_EQ(kept, 0);
  screen.writeNote("door open");
  settle();
  EXPECT_EQ(kept, 1);
}

}  // namespace
}  // namespace jambline::screens
