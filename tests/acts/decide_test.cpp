// What decide() refuses, command by command, and what it writes when it does not.
#include "tests/acts/one_device.h"
#include "trade/vin.h"

namespace jambline::acts {
namespace {

TEST_F(DecideTest, StopAndPauseWithoutAStartAreRefused) {
  refused(StopClock{painter}, Code::NotRunning);
  refused(PauseClock{painter}, Code::NotRunning);
  did(StartClock{painter, job, operation(0)});
  did(PauseClock{painter});
  refused(PauseClock{painter}, Code::NotRunning);
  did(StopClock{painter});
  refused(StopClock{painter}, Code::NotRunning);
}

TEST_F(DecideTest, AStopMayBeSaidAfterwardsButNotBeforeTheStartNorOfAPause) {
  did(StartClock{painter, job, operation(0)});
  const std::int64_t start_ms = car().running.front().start_ms;
  refused(StopClock{painter, start_ms - 1}, Code::OutOfRange);
  const auto written = did(StopClock{painter, start_ms + 1000});
  ASSERT_EQ(written.size(), 1U);
  EXPECT_EQ(written[0].payload.get<entries::ClockActed>().happened_ms, start_ms + 1000);
  did(StartClock{painter, job, operation(0)});
  did(PauseClock{painter});
  refused(StopClock{painter, now_ms + 1000}, Code::OutOfRange);
}

TEST_F(DecideTest, AClockThatRunsOnThisIsNotStartedAgain) {
  did(StartClock{painter, job, operation(0)});
  refused(StartClock{painter, job, operation(0)}, Code::AlreadyRunning);
}

TEST_F(DecideTest, StartingElsewhereEndsWhatRanInTheSameAction) {
  did(StartClock{painter, job, operation(0)});
  const JobId other = did(usual_car()).front().subject;
  const auto written = did(StartClock{painter, other, views.at(other).operations[0].operation});
  EXPECT_EQ(written.size(), 2U);
  EXPECT_TRUE(car().running.empty());
  EXPECT_EQ(car().worked.size(), 1U);
  EXPECT_EQ(views.at(other).running.size(), 1U);
}

TEST_F(DecideTest, AClockOfNobodyOrOnNothingIsRefused) {
  refused(StartClock{PersonId{}, job, operation(0)}, Code::Unknown);
  refused(StartClock{painter, job, OperationId{}}, Code::Unknown);
  refused(StartClock{painter, JobId{}, operation(0)}, Code::Unknown);
}

TEST_F(DecideTest, AMarkOutsideItsPanelIsRefusedPlacedOrMoved) {
  refused(nib(-1, 300), Code::OutsidePanel);
  refused(nib(1e6, 300), Code::OutsidePanel);
  did(nib(500, 700));
  refused(MoveMark{job, panel(Panel::Hood).marks[0].mark, 1e6, 0}, Code::OutsidePanel);
}

TEST_F(DecideTest, AMarkOnAPanelThatIsNotInTheJobIsRefused) {
  refused(PlaceMark{job, Panel::Roof, 500, 500, {}, 1, {}}, Code::Unknown);
}

TEST_F(DecideTest, ASizeOffTheStripIsRefused) {
  auto mark = nib(500, 700);
  mark.size = 5;
  refused(mark, Code::OutOfRange);
  mark.size = 0;
  refused(mark, Code::OutOfRange);
}

TEST_F(DecideTest, TheFirstMarkSaysToCorrectInTheSameAction) {
  EXPECT_EQ(did(nib(500, 700)).size(), 2U);
  EXPECT_EQ(panel(Panel::Hood).verdict, Verdict::ToCorrect);
  EXPECT_EQ(did(nib(520, 700)).size(), 1U);
}

TEST_F(DecideTest, AMarkThatIsNotThereCannotBeMovedDescribedOrWithdrawn) {
  refused(MoveMark{job, MarkId{}, 500, 700}, Code::Unknown);
  refused(DescribeMark{job, MarkId{}, {}, 1, {}}, Code::Unknown);
  refused(WithdrawMark{job, MarkId{}}, Code::Unknown);
  did(nib(500, 700));
  const MarkId mark = panel(Panel::Hood).marks[0].mark;
  did(WithdrawMark{job, mark});
  refused(WithdrawMark{job, mark}, Code::Unknown);
}

// The check sign of 1M8GDM9AXKP042788 is X by the arithmetic of 49 CFR 565.15; 4 is wrong.
TEST_F(DecideTest, AVinWithAWrongCheckSignIsRefusedUnlessUsedAsTyped) {
  const std::string wrong = "1M8GDM9A4KP042788";
  refused(SetVin{job, wrong, false}, Code::VinCheckFails);
  EXPECT_EQ(decided(SetVin{job, wrong, false}).error().arg("expected"), "X");
  did(SetVin{job, wrong, true});
  EXPECT_EQ(car().vin, wrong);
  EXPECT_FALSE(car().vin_passes);
  did(SetVin{job, "1m8gdm9axkp042788", false});
  EXPECT_TRUE(car().vin_passes);
  refused(SetVin{job, "", true}, Code::OutOfRange);
}

TEST_F(DecideTest, ACarWithoutPlateOrPanelsOrWithAPanelTwiceIsNotOpened) {
  auto open = usual_car();
  open.plate = "  ";
  refused(open, Code::Missing);
  open = usual_car();
  open.panels.clear();
  refused(open, Code::Missing);
  open = usual_car();
  open.panels.push_back(open.panels.front());
  refused(open, Code::AlreadyDone);
  open = usual_car();
  open.panels.front().panel = Panel::SlidingDoor;
  refused(open, Code::Unknown);
  open = usual_car();
  open.operations.front().estimate_min = -1;
  refused(open, Code::OutOfRange);
}

TEST_F(DecideTest, TheSameVerdictTwiceAndNoVerdictAreRefused) {
  did(GiveVerdict{job, Panel::Hood, Verdict::Clean, false, {}});
  refused(GiveVerdict{job, Panel::Hood, Verdict::Clean, false, {}}, Code::AlreadyDone);
  refused(GiveVerdict{job, Panel::Hood, Verdict::NotLookedAt, false, {}}, Code::Missing);
}

TEST_F(DecideTest, APartGoesToTheRackOnlyCleanLooseAndLookedAtAllRound) {
  refused(GiveVerdict{job, Panel::FrontBumper, Verdict::Clean, false, rack}, Code::NotYet);
  refused(GiveVerdict{job, Panel::FrontBumper, Verdict::Redo, true, rack}, Code::NotYet);
  refused(GiveVerdict{job, Panel::Hood, Verdict::Clean, true, rack}, Code::NotYet);
  did(GiveVerdict{job, Panel::FrontBumper, Verdict::Clean, true, rack});
  EXPECT_EQ(panel(Panel::FrontBumper).release.state, folds::ReleaseState::Offered);
}

TEST_F(DecideTest, AReleaseIsTakenOnceAndAReturnWantsAReason) {
  refused(OfferRelease{job, Panel::Hood, job::Role::Detailer, {}}, Code::NotYet);
  refused(TakeRelease{job, ReleaseId{}}, Code::Unknown);
  did(GiveVerdict{job, Panel::FrontBumper, Verdict::Clean, true, rack});
  const ReleaseId release = panel(Panel::FrontBumper).release.release;
  refused(ReturnRelease{job, release, " "}, Code::Missing);
  did(TakeRelease{job, release});
  refused(TakeRelease{job, release}, Code::AlreadyDone);
  refused(ReturnRelease{job, release, "edge open"}, Code::AlreadyDone);
}

TEST_F(DecideTest, ADisputeStandsInTheWayOfOfferingAndDeliveringUntilItIsSettled) {
  const auto first = decided(GiveVerdict{job, Panel::Hood, Verdict::Clean, false, {}});
  did(GiveVerdict{job, Panel::Hood, Verdict::Redo, false, {}});
  entries::Entry other;
  other.subject = job;
  other.order = {++count, {}, count};
  other.hash.bytes[0] = 200;
  other.payload = first->front().payload;
  apply(other);
  ASSERT_TRUE(panel(Panel::Hood).disputed);
  refused(OfferRelease{job, {}, job::Role::Manager, {}}, Code::Disputed);
  refused(Deliver{job}, Code::Disputed);
  did(GiveVerdict{job, Panel::Hood, Verdict::Clean, false, {}});
  EXPECT_FALSE(panel(Panel::Hood).disputed);
  sign();
  did(Deliver{job});
  refused(Deliver{job}, Code::AlreadyDone);
}

TEST_F(DecideTest, AStageIsNotFinishedTwice) {
  did(FinishStage{job, job::Stage::Prep, true, job::WithoutShots::NoCamera});
  refused(FinishStage{job, job::Stage::Prep, true, job::WithoutShots::NoCamera}, Code::AlreadyDone);
  did(FinishStage{job, job::Stage::Prep, false});
  did(FinishStage{job, job::Stage::Prep, true, job::WithoutShots::NoCamera});
}

// The design's own rule: who says that a stage is done is no longer at it.
TEST_F(DecideTest, FinishingAStageStopsTheOwnClockOnItInTheSameAction) {
  person = painter;
  did(StartClock{painter, job, operation(0)});
  did(StartClock{manager, job, operation(0)});
  const auto done = did(FinishStage{job, job::Stage::Prep, true, job::WithoutShots::NoCamera});
  EXPECT_EQ(done.size(), 2U);
  ASSERT_EQ(car().running.size(), 1U);
  EXPECT_EQ(car().running[0].person, manager);
  std::vector<std::pair<JobId, Hash>> undo;
  for (const auto& entry : done) undo.emplace_back(entry.subject, entry.hash);
  did(UndoAction{undo});
  ASSERT_EQ(car().running.size(), 2U);
  for (const auto& running : car().running) EXPECT_FALSE(running.paused);
  for (const auto& stage : car().stages) EXPECT_FALSE(stage.done);
}

TEST_F(DecideTest, FinishingAnotherStageLetsTheClockRun) {
  person = painter;
  did(StartClock{painter, job, operation(1)});
  EXPECT_EQ(did(FinishStage{job, job::Stage::Prep, true, job::WithoutShots::NoCamera}).size(), 1U);
  EXPECT_EQ(car().running.size(), 1U);
}

TEST_F(DecideTest, UndoTakesBackAllThatTheActWroteAndUndoOfUndoBringsItBack) {
  std::vector<std::pair<JobId, Hash>> written;
  for (const auto& entry : did(nib(500, 700))) written.emplace_back(entry.subject, entry.hash);
  std::vector<std::pair<JobId, Hash>> undo;
  for (const auto& entry : did(UndoAction{written})) undo.emplace_back(entry.subject, entry.hash);
  EXPECT_TRUE(panel(Panel::Hood).marks.empty());
  EXPECT_EQ(panel(Panel::Hood).verdict, Verdict::NotLookedAt);
  did(UndoAction{undo});
  EXPECT_EQ(panel(Panel::Hood).marks.size(), 1U);
  EXPECT_EQ(panel(Panel::Hood).verdict, Verdict::ToCorrect);
  refused(UndoAction{}, Code::Missing);
}

TEST_F(DecideTest, ACarWithEntriesOfANewerVersionIsReadOnly) {
  entries::Entry newer;
  newer.subject = job;
  newer.order = {++count, {}, count};
  newer.hash.bytes[0] = 201;
  newer.payload = entries::UnknownEntry{"unknown kind 4711"};
  apply(newer);
  refused(nib(500, 700), Code::NewerSchema);
  refused(SetPlate{job, "K 1"}, Code::NewerSchema);
  refused(WriteNote{job, "seen"}, Code::NewerSchema);
}

TEST_F(DecideTest, PeopleAreChangedByAManagerOnlyAndNamesAreNotTakenTwice) {
  refused(AddPerson{"Ivo", job::Role::Helper}, Code::AlreadyDone);
  refused(AddPerson{" ", job::Role::Helper}, Code::Missing);
  person = painter;
  refused(AddPerson{"Lou", job::Role::Manager}, Code::NotAllowed);
  refused(ChangeRole{painter, job::Role::Manager}, Code::NotAllowed);
  refused(LetPersonGo{manager}, Code::NotAllowed);
  person = manager;
  did(LetPersonGo{painter});
  refused(LetPersonGo{painter}, Code::AlreadyDone);
  refused(StartClock{painter, job, operation(0)}, Code::Unknown);
}

TEST_F(DecideTest, PeopleAndRolesAreGivenOnAManagersDevice) {
  manager_device = false;
  for (const Command& command : {Command(AddPerson{"Kim", job::Role::Helper}),
                                 Command(ChangeRole{painter, job::Role::Manager})}) {
    refused(command, Code::NotAllowed);
    EXPECT_FALSE(decided(command).error().arg("device").empty());
  }
  did(RenamePerson{painter, "Ivo K."});
  did(LetPersonGo{painter});
}

TEST_F(DecideTest, AManagerNamesDevices) {
  const DeviceId cart{{4}};
  did(NameDevice{cart, " cart 1 "});
  did(NameDevice{cart, "booth tablet"});
  ASSERT_EQ(shop_view.device_names.size(), 1U);
  EXPECT_EQ(shop_view.device_names.front().name, "booth tablet");
  EXPECT_EQ(shop_view.device_names.front().heads.size(), 1U);
  did(NameDevice{DeviceId{{5}}, "booth tablet"});  // a name is no key
  EXPECT_EQ(shop_view.device_names.size(), 2U);
  refused(NameDevice{cart, ""}, Code::Missing);
  refused(NameDevice{{}, "cart"}, Code::Missing);
  refused(NameDevice{cart, std::string(81, 'a')}, Code::TooLarge);
  person = painter;
  refused(NameDevice{cart, "mine"}, Code::NotAllowed);
}

TEST_F(DecideTest, WhatNeedsARightIsTakenBackByWhoHasIt) {
  const Hash sheet{{77}};
  needed = [&](const JobId&, const Hash& entry) {
    return entry == sheet ? entries::Right::Manager : entries::Right::Technician;
  };
  person = painter;
  refused(Withdraw{{}, sheet, ""}, Code::NotAllowed);
  refused(UndoAction{{{JobId{}, sheet}}}, Code::NotAllowed);
  did(Withdraw{{}, Hash{{78}}, ""});
  person = manager;
  did(Withdraw{{}, sheet, ""});
}

TEST_F(DecideTest, AShopNeedsANameAndAKnownZone) {
  refused(NameShop{"", "America/New_York"}, Code::Missing);
  refused(NameShop{"Shop", "Nowhere/Town"}, Code::Unknown);
  did(NameShop{"Shop", "America/New_York"});
}

TEST_F(DecideTest, NothingIsKnownOfACarThatWasNeverOpened) {
  JobId nobody;
  nobody.bytes[0] = 9;
  refused(WriteNote{nobody, "seen"}, Code::Unknown);
  refused(Deliver{nobody}, Code::Unknown);
}

}  // namespace
}  // namespace jambline::acts
