// Two people on two devices, out of reach of each other: one part, two takers or two offers; and
// the order in which a car goes together.
#include "folds/assembly_of_car.h"
#include "tests/acts/one_device.h"

namespace jambline::acts {
namespace {

using job::RuleKind;
using job::Step;

class HandOffTest : public DecideTest {
 protected:
  void SetUp() override {
    DecideTest::SetUp();
    did(GiveVerdict{job, Panel::FrontBumper, Verdict::Clean, true});
    did(AddPerson{"Jo", job::Role::BodyTechnician});
    jo = shop_view.people.back().person;
    did(AddPerson{"Ana", job::Role::BodyTechnician});
    ana = shop_view.people.back().person;
  }
  // What somebody decided who had not seen what the other did meanwhile.
  std::vector<Draft> unseen(const PersonId& who, const Command& command) {
    const PersonId was = std::exchange(person, who);
    auto drafts = decided(command);
    person = was;
    EXPECT_TRUE(drafts);
    return drafts ? *drafts : std::vector<Draft>{};
  }
  void arrives(const PersonId& who, const std::vector<Draft>& drafts) {
    for (const auto& draft : drafts) {
      entries::Entry entry;
      entry.subject = draft.subject;
      entry.order = {++count, {}, count};
      entry.hash.bytes[0] = static_cast<std::uint8_t>(count);
      entry.hash.bytes[1] = 1;
      entry.wall_ms = now_ms;
      entry.person = who;
      const auto written = entries::write(draft.payload);
      entry.payload = entries::read(written.kind, written.schema, written.payload, false);
      apply(entry);
    }
  }
  const folds::ReleaseView& bumper() { return panel(Panel::FrontBumper).release; }

  PersonId jo, ana;
};

TEST_F(HandOffTest, TwoWhoTookTheSamePartAreBothNamedAndOneTapSettlesIt) {
  did(OfferRelease{job, Panel::FrontBumper, job::Role::BodyTechnician, rack});
  const TakeRelease take{job, bumper().release};
  const auto by_jo = unseen(jo, take);
  const auto by_ana = unseen(ana, take);
  arrives(jo, by_jo);
  arrives(ana, by_ana);
  EXPECT_TRUE(bumper().disputed);
  EXPECT_EQ(bumper().takers, (std::vector<PersonId>{jo, ana}));
  EXPECT_TRUE(folds::floor_row(car()).disputed);
  refused(take, Code::Disputed);
  did(SettleRelease{job, bumper().release, ana});
  EXPECT_FALSE(bumper().disputed);
  EXPECT_EQ(bumper().taker, ana);
  refused(SettleRelease{job, bumper().release, ana}, Code::AlreadyDone);
}

TEST_F(HandOffTest, OneTookItAndOneSentItBack) {
  did(OfferRelease{job, Panel::FrontBumper, job::Role::BodyTechnician, {}});
  const auto taken = unseen(jo, TakeRelease{job, bumper().release});
  const auto back = unseen(ana, ReturnRelease{job, bumper().release, "still soft"});
  arrives(jo, taken);
  arrives(ana, back);
  EXPECT_TRUE(bumper().disputed);
  EXPECT_EQ(bumper().takers, (std::vector<PersonId>{jo, person})) << "the taker, and the giver";
}

TEST_F(HandOffTest, TwoOffersOfOnePartAreSettledToo) {
  const auto by_jo = unseen(jo, OfferRelease{job, Panel::FrontBumper, {}, rack});
  const auto by_ana =
      unseen(ana, OfferRelease{job, Panel::FrontBumper, job::Role::BodyTechnician, {}});
  arrives(jo, by_jo);
  arrives(ana, by_ana);
  EXPECT_TRUE(bumper().disputed);
  EXPECT_EQ(bumper().takers, (std::vector<PersonId>{jo, ana}));
  did(SettleRelease{job, bumper().release, jo});
  EXPECT_FALSE(bumper().disputed);
  EXPECT_EQ(bumper().state, folds::ReleaseState::Taken);
  EXPECT_EQ(bumper().taker, jo);
}

TEST_F(HandOffTest, TheFloorKnowsWhereAPartIs) {
  EXPECT_EQ(folds::floor_row(car()).parts.size(), 1U) << "the loose one";
  EXPECT_TRUE(folds::floor_row(car()).parts.front().clean);
  did(OfferRelease{job, Panel::FrontBumper, {}, rack});
  EXPECT_EQ(folds::floor_row(car()).parts.front().rack, rack);
  did(OfferRelease{job, {}, job::Role::Detailer, {}});
  EXPECT_EQ(folds::floor_row(car()).parts.size(), 2U) << "and the car as a whole";
}

TEST_F(HandOffTest, AManagerAnswersASupplement) {
  PlannedOperation more{job::Stage::Teardown, "Beam", 90, job::WorkKind::Supplement, "bent"};
  more.approval = job::Approval::Given;
  person = painter;
  refused(PlanOperation{job, more}, Code::NotAllowed);
  more.approval = job::Approval::Asked;
  did(PlanOperation{job, more});
  const auto planned = car().operations.back().stage == job::Stage::Teardown
                           ? car().operations.back()
                           : car().operations.front();
  refused(AnswerSupplement{job, planned.operation, job::Approval::Refused}, Code::NotAllowed);
  person = manager;
  did(AnswerSupplement{job, planned.operation, job::Approval::Refused});
}

TEST_F(HandOffTest, WorkThatCameOnTopOfADoneStageIsStillToDo) {
  did(FinishStage{job, job::Stage::Prep, true, job::WithoutShots::NotNeeded});
  did(PlanOperation{job,
                    {job::Stage::Prep, "Beam", 90, job::WorkKind::Supplement, "hidden damage"}});
  std::map<std::string, bool> done;
  for (const auto& one : car().operations)
    if (one.stage == job::Stage::Prep) done[one.title] = one.done;
  EXPECT_EQ(done, (std::map<std::string, bool>{{"", true}, {"Beam", false}}));
  did(FinishStage{job, job::Stage::Prep, false});
  did(FinishStage{job, job::Stage::Prep, true, job::WithoutShots::NotNeeded});
  for (const auto& one : car().operations)
    EXPECT_TRUE(one.done || one.stage != job::Stage::Prep) << one.title;
}

TEST_F(HandOffTest, WhatComesBeforeByARuleStandsBeforeIt) {
  OpenCar open = usual_car();
  open.plate = "V 2";
  open.panels.clear();
  for (const auto& drawn :
       {Panel::LeftFrontDoor, Panel::LeftFender, Panel::Hood, Panel::FrontBumper})
    open.panels.push_back({drawn, false});
  open.operations.clear();
  for (const auto stage : {job::Stage::Correct, job::Stage::CavityWax, job::Stage::Assemble,
                           job::Stage::SensorsAndScan, job::Stage::LastPolish, job::Stage::Wash})
    open.operations.push_back({stage, "", 30});
  job = did(open).front().subject;
  const auto steps = folds::in_order(folds::steps_of_car(car(), shop_view, now()), shop_view);
  const auto place = [&](Step step) {
    return std::find_if(steps.begin(), steps.end(),
                        [&](const auto& one) { return one.step == step; }) -
           steps.begin();
  };
  const auto all = static_cast<std::ptrdiff_t>(steps.size());
  int held = 0;
  for (const auto& rule : shop_view.rules) {
    if (place(rule.said.before) == all || place(rule.said.after) == all) continue;
    EXPECT_LT(place(rule.said.before), place(rule.said.after)) << word_of(rule.said.after);
    ++held;
  }
  EXPECT_GE(held, 15);
  EXPECT_EQ(steps.back().step, Step::Delivery);
}

TEST_F(HandOffTest, ACircleIsRefusedWithItsSteps) {
  const auto drafts =
      decided(SetRule{{}, {Step::HoodFit, Step::RearDoorFit, RuleKind::Hard, "own"}});
  ASSERT_FALSE(drafts);
  EXPECT_EQ(drafts.error().code, Code::Malformed);
  // Any of its steps may be named first.
  for (const auto step : {Step::RearDoorFit, Step::FrontDoorFit, Step::FenderFit, Step::HoodFit})
    EXPECT_NE(drafts.error().arg("cycle").find(word_of(step)), std::string::npos) << word_of(step);
}

}  // namespace
}  // namespace jambline::acts
