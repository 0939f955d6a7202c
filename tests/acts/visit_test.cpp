// The visit besides its paint: supplements, parts, work outside, waits, amended clocks, who has a
// part, the order of assembly, fit, signatures, delivery and comeback.
#include "folds/assembly_of_car.h"
#include "folds/fit_of_panel.h"
#include "folds/open_points.h"
#include "tests/acts/one_device.h"

namespace jambline::acts {
namespace {

using job::RuleReason;
using job::Step;

class VisitTest : public DecideTest {
 protected:
  JobId open_with(std::vector<job::PanelPlan> panels, std::vector<job::Stage> stages) {
    OpenCar open = usual_car();
    open.plate = "V 1";
    open.panels = std::move(panels);
    open.operations.clear();
    for (const auto stage : stages) open.operations.push_back({stage, "", 30});
    job = did(open).front().subject;
    return job;
  }
  void clean_all() {
    const auto panels = car().panels;
    for (const auto& panel : panels)
      did(GiveVerdict{job, panel.plan.panel, job::Verdict::Clean, true});
    for (const auto& stage : car().stages) {
      const auto which = stage.stage;
      did(FinishStage{job, which, true, job::WithoutShots::NotNeeded});
    }
  }
};

TEST_F(VisitTest, ASupplementSaysWhyAndWaitsForItsAnswer) {
  PlannedOperation more{job::Stage::Teardown, "Hidden damage", 90, job::WorkKind::Supplement};
  more.approval = job::Approval::Asked;
  refused(PlanOperation{job, more}, Code::Missing);
  more.why = "bumper beam bent";
  did(PlanOperation{job, more});
  const auto planned = *std::find_if(car().operations.begin(), car().operations.end(),
                                     [](const auto& one) { return one.title == "Hidden damage"; });
  EXPECT_EQ(planned.work, job::WorkKind::Supplement);
  EXPECT_EQ(folds::floor_row(car()).holds.size(), 1U);
  did(AnswerSupplement{job, planned.operation, job::Approval::Given});
  refused(AnswerSupplement{job, planned.operation, job::Approval::Given}, Code::AlreadyDone);
  EXPECT_TRUE(folds::floor_row(car()).holds.empty());
  person = painter;
  refused(ChangeEstimate{job, planned.operation, 120}, Code::NotAllowed);
  person = manager;
  did(ChangeEstimate{job, planned.operation, 120});
  const auto* now = car().find(planned.operation);
  EXPECT_EQ(now->estimate_min, 120);
  EXPECT_EQ(now->why, "bumper beam bent") << "a new estimate forgets nothing";
  EXPECT_EQ(now->approval, job::Approval::Given);
}

TEST_F(VisitTest, AnOperationIsDoneByWhoeverTapsAndTheOwnClockStops) {
  const auto operation = car().operations.front().operation;
  did(StartClock{person, job, operation});
  const auto written = did(FinishOperation{job, operation});
  EXPECT_EQ(written.size(), 2U);
  EXPECT_TRUE(car().running.empty());
  EXPECT_EQ(car().find(operation)->done_by, person);
  did(FinishOperation{job, operation, false});
  EXPECT_FALSE(car().find(operation)->done);
}

TEST_F(VisitTest, APartOnOrderHoldsTheCarUntilItArrives) {
  refused(SayPart{job, {}, {"", job::PartState::Ordered, {}}}, Code::Missing);
  refused(SayPart{job, {}, {"lamp", job::PartState::Ordered, now_ms - 3 * 86'400'000LL}},
          Code::OutOfRange);
  const std::int64_t expected_ms = now_ms + 86'400'000;
  did(SayPart{job, {}, {"lamp", job::PartState::Ordered, expected_ms}});
  auto part = car().visit.parts.front();
  ASSERT_EQ(folds::floor_row(car()).holds.size(), 1U);
  EXPECT_EQ(folds::floor_row(car()).holds.front().until_ms, expected_ms);
  part.said.state = job::PartState::Arrived;
  did(SayPart{job, part.part, part.said});
  EXPECT_TRUE(folds::floor_row(car()).holds.empty());
}

TEST_F(VisitTest, AWaitIsASpanWithItsReason) {
  refused(SayWait{job, job::WaitReason::Booth, false}, Code::NotRunning);
  did(SayWait{job, job::WaitReason::Booth});
  now_ms += 3'540'000;  // and each act takes a minute
  did(SayWait{job, job::WaitReason::Booth, false});
  ASSERT_EQ(car().visit.waits.size(), 1U);
  EXPECT_EQ(*car().visit.waits.front().end_ms - car().visit.waits.front().start_ms, 3'600'000);
  EXPECT_TRUE(car().visit.waits_for.empty());
}

TEST_F(VisitTest, AnAmendedClockActKeepsBothTimesAndStaysBetweenItsNeighbors) {
  const auto operation = car().operations.front().operation;
  did(StartClock{person, job, operation});
  const std::int64_t start_ms = now_ms;
  now_ms += 3'540'000;  // and each act takes a minute
  did(StopClock{person});
  const auto acts = car().visit.clock_acts;
  ASSERT_EQ(acts.size(), 2U);
  refused(AmendClock{job, acts[1].entry, start_ms - 1, "late"}, Code::OutOfRange);
  refused(AmendClock{job, acts[0].entry, now_ms + 1, "late"}, Code::OutOfRange);
  refused(AmendClock{job, acts[1].entry, start_ms + 60'000, " "}, Code::Missing);
  did(AmendClock{job, acts[1].entry, start_ms + 1'800'000, "went home at half past"});
  EXPECT_EQ(car().find(operation)->clocked_ms, 1'800'000);
  ASSERT_EQ(car().visit.amended.size(), 1U);
  EXPECT_EQ(car().visit.amended.front().clock_ms, start_ms + 3'600'000) << "what the clock said";
  EXPECT_EQ(car().visit.amended.front().reason, "went home at half past");
}

TEST_F(VisitTest, AForgottenStartIsSaidAfterwards) {
  const auto operation = car().operations.front().operation;
  refused(StartClock{person, job, operation, now_ms + 3'600'000}, Code::NotYet);
  did(StartClock{person, job, operation, now_ms - 1'200'000});
  now_ms += 480'000;  // and each act takes a minute
  did(StopClock{person});
  EXPECT_EQ(car().find(operation)->clocked_ms, 1'800'000);
  now_ms += 600'000;
  refused(StartClock{person, job, operation, now_ms - 900'000}, Code::OutOfRange);
}

TEST_F(VisitTest, StepsComeInTheOrderOfTheShop) {
  open_with({{job::Panel::LeftFrontDoor, false}, {job::Panel::LeftFender, false}},
            {job::Stage::Assemble});
  refused(SayStep{job, Step::GlassSet}, Code::Unknown);
  refused(SayStep{job, Step::FenderFit}, Code::NotYet);
  did(SayStep{job, Step::FenderFit, true, RuleReason::NoOtherWay});
  ASSERT_EQ(car().assembly.find(Step::FenderFit)->broken.size(), 1U) << "it is kept and seen";
  did(SayStep{job, Step::FenderFit, false});
  did(SayStep{job, Step::FrontDoorFit});
  did(SayStep{job, Step::FenderFit});
  EXPECT_TRUE(car().assembly.find(Step::FenderFit)->broken.empty());
}

TEST_F(VisitTest, NobodyDrivesBeforeTheLatchIsChecked) {
  open_with({{job::Panel::Hood, false}}, {});
  clean_all();
  refused(SayStep{job, Step::RoadTest, true, RuleReason::ManagerDecided}, Code::NotAllowed);
  refused(Deliver{job, RuleReason::ManagerDecided}, Code::NotYet);
  sign();
  refused(Deliver{job, RuleReason::ManagerDecided}, Code::NotAllowed);
  did(SayStep{job, Step::LatchAndCatchChecked});
  did(SayStep{job, Step::RoadTest});
  did(MoveFasteners{job, job::Panel::Hood, {{"latch", 0, 1, 0}}});
  EXPECT_TRUE(folds::latch_to_check(car())) << "a latch was moved after it was checked";
  refused(Deliver{job}, Code::NotAllowed);
  did(SayStep{job, Step::LatchAndCatchChecked});
  did(Deliver{job});
  EXPECT_TRUE(car().delivered_ms);
}

TEST_F(VisitTest, RulesThatGoInACircleAreRefusedWithTheirNames) {
  person = manager;
  const auto answer = decided(
      SetRule{{}, {Step::BumperLampsGrille, Step::RearDoorFit, job::RuleKind::Hard, "test"}});
  ASSERT_FALSE(answer);
  EXPECT_EQ(answer.error().code, Code::Malformed);
  EXPECT_EQ(answer.error().arg("cycle"),
            "bumper cover, headlamps, grille, then rear door to quarter, then front door to rear "
            "door, then fender fitted, then hood fitted, then bumper cover, headlamps, grille");
  const auto& rules = shop_view.rules;
  const auto latch = *std::find_if(
      rules.begin(), rules.end(), [](const auto& one) { return one.said.after == Step::RoadTest; });
  auto weaker = latch.said;
  weaker.kind = job::RuleKind::Soft;
  refused(SetRule{latch.rule, weaker}, Code::NotAllowed);
  person = painter;
  refused(SetRule{{}, {Step::LampsAimed, Step::RoadTest, job::RuleKind::Soft, "at night"}},
          Code::NotAllowed);
}

TEST_F(VisitTest, OpenPointsAreSignedForOrClosed) {
  open_with({{job::Panel::Roof, true}}, {job::Stage::Wash});
  EXPECT_EQ(folds::open_points(car(), shop_view, now()).size(), 2U);
  refused(Deliver{job}, Code::NotYet);
  sign();
  did(SayPart{job, {}, {"antenna", job::PartState::Ordered, {}}});
  refused(Deliver{job}, Code::NotYet);  // one more point than was signed for
  sign();
  const auto written = did(Deliver{job});
  EXPECT_EQ(written.back().payload.get<entries::CarDelivered>().open_points, 3);
}

TEST_F(VisitTest, TheWalkAroundIsNoPointOfItsOwnAndEndsWithTheDelivery) {
  open_with({{job::Panel::Roof, true}}, {job::Stage::WalkAround});
  did(GiveVerdict{job, job::Panel::Roof, job::Verdict::Clean, true});
  auto points = folds::open_points(car(), shop_view, now());
  ASSERT_EQ(points.size(), 1U);
  EXPECT_EQ(points.front().kind, folds::OpenPointKind::ShotsMissing);
  EXPECT_EQ(points.front().count, 6) << "four corners, the panel and the odometer (job/shot.h)";
  const auto painted = person;
  person = manager;
  did(SetShotList{job::Stage::WalkAround, {}});
  person = painted;
  EXPECT_TRUE(folds::open_points(car(), shop_view, now()).empty());
  const auto walked = car().operations.back().operation;
  did(StartClock{person, job, walked});
  did(Deliver{job});
  EXPECT_TRUE(car().running.empty());
  EXPECT_TRUE(car().stages.back().done);
}

TEST_F(VisitTest, PicturesThatAreNotNeededAreNoOpenPoint) {
  open_with({{job::Panel::Roof, true}}, {job::Stage::Wash});
  did(GiveVerdict{job, job::Panel::Roof, job::Verdict::Clean, true});
  did(FinishStage{job, job::Stage::Wash, true, job::WithoutShots::NoCamera});
  EXPECT_EQ(folds::open_points(car(), shop_view, now()).size(), 1U);
  did(FinishStage{job, job::Stage::Wash, false});
  did(FinishStage{job, job::Stage::Wash, true, job::WithoutShots::NotNeeded});
  EXPECT_TRUE(folds::open_points(car(), shop_view, now()).empty());
}

TEST_F(VisitTest, AComebackReopensTheCarAndIsLinkedToItsDelivery) {
  open_with({{job::Panel::Roof, true}}, {});
  clean_all();
  refused(SayCameBack{job, "wind noise"}, Code::NotYet);
  did(Deliver{job});
  const Hash delivered = car().delivered_entry;
  did(SayCameBack{job, "wind noise", job::Panel::Roof, "the shop"});
  EXPECT_FALSE(car().delivered_ms) << "it is in work again";
  EXPECT_EQ(car().operations.back().work, job::WorkKind::Comeback);
  refused(SayCameBack{job, "again"}, Code::NotYet);
  did(FinishStage{job, job::Stage::Comeback, true, job::WithoutShots::NotNeeded});
  did(Deliver{job});
  EXPECT_TRUE(car().delivered_ms);
  EXPECT_NE(car().delivered_entry, delivered);
  EXPECT_TRUE(car().visit.comebacks.front().over);
}

TEST_F(VisitTest, TheAnswerOfAFitIsTheCalculatorsAndSlotsAreUsedUp) {
  open_with({{job::Panel::Hood, false}}, {});
  refused(MeasureFit{job, job::Panel::Hood, job::FitRound::TrialFit, {}}, Code::Missing);
  refused(MeasureFit{job, job::Panel::Hood, job::FitRound::TrialFit, {{0, 0, 0, 60, 4}}},
          Code::OutOfRange);
  did(MeasureFit{job, job::Panel::Hood, job::FitRound::TrialFit, {{100, 50, 270, 4.5, 4}}});
  EXPECT_EQ(folds::wanted_at(car(), job::Panel::Hood, 110, 60).gap_mm, 4.5)
      << "what the trial fit was set to";
  did(MeasureFit{job,
                 job::Panel::Hood,
                 job::FitRound::AfterHanging,
                 {{100, 50, 270, 5.5, 4.5}, {900, 50, 270, 5.5, 4.5}, {500, 1350, 90, 3.5, 4.5}}});
  auto fit = folds::fit_of_panel(car(), job::Panel::Hood);
  ASSERT_TRUE(fit && fit->gaps && *fit->gaps);
  EXPECT_NEAR((*fit->gaps)->shift_y_mm, -1, 1e-6);
  EXPECT_TRUE((*fit->gaps)->reached);
  refused(MoveFasteners{job, job::Panel::Hood, {{"no such bolt", 1, 0, 0}}}, Code::Unknown);
  did(MoveFasteners{job, job::Panel::Hood, {{"latch", 0, -4, 0}}});
  fit = folds::fit_of_panel(car(), job::Panel::Hood);
  EXPECT_FALSE((*fit->gaps)->reached) << "the latch's slot is used up";
  EXPECT_TRUE((*fit->gaps)->stopped_by_slots);
}

TEST_F(VisitTest, TheCalendarIsSevenDaysThatAreOpenSometimes) {
  person = manager;
  auto calendar = job::usual_calendar();
  calendar.week.pop_back();
  refused(SetCalendar{calendar}, Code::Malformed);
  calendar = {{{}, {}, {}, {}, {}, {}, {}}, {}};
  refused(SetCalendar{calendar}, Code::Missing);
  calendar = job::usual_calendar();
  calendar.week[0] = {600, 500};
  refused(SetCalendar{calendar}, Code::OutOfRange);
  calendar = job::usual_calendar();
  calendar.holidays = {20'850, 20'800, 20'850};
  did(SetCalendar{calendar});
  EXPECT_EQ(shop_view.calendar.holidays, (std::vector<int>{20'800, 20'850}));
}

TEST_F(VisitTest, HowLongRecordsAreKeptIsAManagersAndMayBeAnyYears) {
  using job::RecordClass;
  person = painter;
  refused(SetRetention{RecordClass::TimeCards, 4}, Code::NotAllowed);
  person = manager;
  refused(SetRetention{RecordClass::TimeCards, {}}, Code::AlreadyDone);
  refused(SetRetention{RecordClass::TimeCards, 0}, Code::OutOfRange);
  refused(SetRetention{RecordClass::TimeCards, 101}, Code::OutOfRange);
  did(SetRetention{RecordClass::TimeCards, 4});
  ASSERT_NE(shop_view.find(RecordClass::TimeCards), nullptr);
  EXPECT_EQ(shop_view.find(RecordClass::TimeCards)->years, 4);
  refused(SetRetention{RecordClass::TimeCards, 4}, Code::AlreadyDone);
  did(SetRetention{RecordClass::TimeCards, 1});  // fewer than usual: the local rule wins
  EXPECT_EQ(shop_view.find(RecordClass::TimeCards)->years, 1);
  did(SetRetention{RecordClass::TimeCards, {}});
  EXPECT_EQ(shop_view.find(RecordClass::TimeCards)->years, std::nullopt);
  EXPECT_EQ(shop_view.find(RecordClass::CarJobs), nullptr);
}

}  // namespace
}  // namespace jambline::acts
