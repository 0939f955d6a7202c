// What a car says to a manager's questions, from what people did on it.
#include "folds/account.h"

#include "base/json.h"
#include "tests/acts/one_device.h"

namespace jambline::acts {
namespace {

class AccountTest : public DecideTest {
 protected:
  folds::Account account() { return folds::account_of(car()); }
  const folds::AccountPanel& hood(const folds::Account& of) {
    for (const auto& one : of.panels)
      if (one.panel == Panel::Hood) return one;
    ADD_FAILURE() << "no hood";
    return of.panels.front();
  }
};

TEST_F(AccountTest, EveryLookStandsInItUntilItIsTakenBack) {
  EXPECT_TRUE(hood(account()).looks.empty());
  const auto redo = did(GiveVerdict{job, Panel::Hood, Verdict::Redo, false, {}}).front();
  did(nib(500, 700));
  did(GiveVerdict{job, Panel::Hood, Verdict::Clean, false, {}});
  auto said = account();
  ASSERT_EQ(hood(said).looks.size(), 2U);
  EXPECT_EQ(hood(said).looks[0].verdict, Verdict::Redo);
  EXPECT_EQ(hood(said).looks[0].entry, redo.hash);
  EXPECT_EQ(hood(said).looks[0].at_ms, redo.wall_ms);
  EXPECT_EQ(hood(said).looks[1].verdict, Verdict::Clean);
  EXPECT_EQ(hood(said).defects, std::vector<job::DefectKind>{job::DefectKind::Nib});
  entries::Entry withdrawn = redo;
  withdrawn.payload = entries::Withdrawn{.target = redo.hash};
  withdrawn.order.seq = ++count;
  withdrawn.order.hlc = count;
  withdrawn.hash.bytes[2] = 9;
  apply(withdrawn);
  said = account();
  EXPECT_EQ(hood(said).looks.size(), 1U) << "a slip of the finger is no redo";
  EXPECT_TRUE(hood(said).defects.empty());
}

TEST_F(AccountTest, PanelsWhoseFaceWasNotSprayedAreNotInIt) {
  did(PlanPanel{job, {Panel::Roof, true, {}, {}, job::Treatment::EdgeOrJambOnly}});
  for (const auto& one : account().panels) EXPECT_NE(one.panel, Panel::Roof);
}

TEST_F(AccountTest, MinutesAreOfWhoClockedThem) {
  person = painter;
  did(StartClock{painter, job, operation(0)});
  now_ms += 30 * 60'000;
  did(StopClock{painter});
  const auto said = account();
  ASSERT_EQ(said.operations.size(), 2U);
  ASSERT_EQ(said.operations[0].clocked.size(), 1U);
  EXPECT_EQ(said.operations[0].clocked[0].person, painter);
  EXPECT_EQ(said.operations[0].clocked_ms(), car().operations[0].clocked_ms);
  EXPECT_EQ(said.operations[0].last_ms, car().worked.back().end_ms);
  EXPECT_EQ(said.operations[1].clocked_ms(), 0);
  EXPECT_EQ(said.operations[1].last_ms, 0);
  EXPECT_FALSE(said.operations[0].entry) << "only work that is no first-time work opens to it";
}

TEST_F(AccountTest, StagesWithPicturesMissingSayHowManyAndWhy) {
  did(FinishStage{job, job::Stage::Prep, true, job::WithoutShots::NoCamera});
  const auto said = account();
  ASSERT_EQ(said.stages.size(), 1U);
  EXPECT_EQ(said.stages[0].stage, job::Stage::Prep);
  EXPECT_EQ(said.stages[0].at_ms, now_ms);
  EXPECT_EQ(said.stages[0].missing, car().stages.front().shots_missing.value_or(0));
  EXPECT_EQ(said.next_stage, job::Stage::Spray);
  EXPECT_FALSE(said.last_ms) << "in work";
}

TEST_F(AccountTest, IsTheSameAfterTheShelf) {
  did(GiveVerdict{job, Panel::Hood, Verdict::Redo, false, {}});
  did(SayWait{job, job::WaitReason::Part});
  folds::CarView view = car();
  view.air.sprays.emplace_back();
  view.air.sprays.back().checks = {
      {job::GunItem::FitTested, job::CutAnswer::No, job::GunReason::Broken, "old"},
      {job::GunItem::Climate, job::CutAnswer::No, {}, {}},
      {job::GunItem::SealOrFlow, job::CutAnswer::Yes, {}, {}}};
  view.air.without = {{BoothId{{3}}, {job::GunItem::SealOrFlow}, painter, {}, Hash{{4}}}};
  view.visit.comebacks.emplace_back();
  const auto said = folds::account_of(view);
  EXPECT_EQ(said.waits.size(), 1U);
  ASSERT_EQ(said.sprays.size(), 1U);
  ASSERT_EQ(said.sprays[0].passed_over.size(), 1U);
  EXPECT_EQ(said.sprays[0].passed_over[0].item, job::GunItem::FitTested);
  EXPECT_EQ(said.sprays[0].not_met, std::vector<job::GunItem>{job::GunItem::Climate});
  const auto back = from_json<folds::Account>(to_json(said));
  ASSERT_TRUE(back);
  EXPECT_EQ(*back, said);
}

}  // namespace
}  // namespace jambline::acts
