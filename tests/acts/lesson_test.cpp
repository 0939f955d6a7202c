// What one car teaches, from what people did on it. Areas: the outlines' own, added here again.
#include "folds/lesson.h"

#include "job/body_shape.h"
#include "tests/acts/one_device.h"

namespace jambline::acts {
namespace {

class LessonTest : public DecideTest {
 protected:
  folds::Lesson lesson() { return folds::lesson_of(car()); }
  static double m2(Panel panel) {
    return trade::area_mm2(job::pattern(job::BodyShape::FourDoorSedan).find(panel)->shape.outline) /
           1e6;
  }
};

TEST_F(LessonTest, ACarCountsOnceEveryPanelThatWasSprayedIsLookedAt) {
  did(nib(500, 700));
  did(nib(550, 700));
  EXPECT_FALSE(lesson().counted);
  did(GiveVerdict{job, Panel::FrontBumper, Verdict::Clean, false, {}});
  EXPECT_TRUE(lesson().counted);
  EXPECT_EQ(lesson().nibs, 2);
  EXPECT_DOUBLE_EQ(lesson().sprayed_m2, m2(Panel::Hood) + m2(Panel::FrontBumper));
  EXPECT_EQ(lesson().flat_nibs, 2);
  EXPECT_DOUBLE_EQ(lesson().flat_m2, m2(Panel::Hood));
  did(PlanPanel{job, {Panel::Roof, true, {}, {}, {}}});
  EXPECT_FALSE(lesson().counted);
  did(PlanPanel{job, {Panel::Roof, true, {}, {}, job::Treatment::EdgeOrJambOnly}});
  EXPECT_TRUE(lesson().counted) << "its face was not sprayed";
  EXPECT_DOUBLE_EQ(lesson().flat_m2, m2(Panel::Hood));
}

TEST_F(LessonTest, OnlyNibsFoundWhenItWasLookedOverAreDirtOfTheSpraying) {
  did(nib(500, 700));
  PlaceMark scratch = nib(600, 700);
  scratch.defect = job::DefectKind::HandlingScratch;
  did(scratch);
  did(nib(650, 700));
  did(WithdrawMark{job, panel(Panel::Hood).marks.back().mark});
  did(FinishStage{job, job::Stage::Assemble, true, job::WithoutShots::NotNeeded});
  did(nib(700, 700));
  EXPECT_EQ(lesson().nibs, 1);
  EXPECT_EQ(lesson().flat_nibs, 1);
}

TEST_F(LessonTest, DirtAllOverIsTheLeastOfItsClassAndSpeaksForNoSide) {
  did(nib(500, 700));
  did(SayDirtAllOver{job, Panel::Hood, job::DirtClass::From20To50});
  EXPECT_EQ(lesson().nibs, 20);
  EXPECT_TRUE(lesson().all_over);
  EXPECT_EQ(lesson().flat_nibs, 0);
  EXPECT_EQ(lesson().flat_m2, 0);
}

TEST_F(LessonTest, TheSprayingIsKnownByItsClockAndWithoutOneByTheFirstLook) {
  EXPECT_EQ(lesson().sprayed_ms, 0);
  did(nib(500, 700));
  const std::int64_t looked_ms = now_ms;
  did(nib(550, 700));
  EXPECT_EQ(lesson().sprayed_ms, looked_ms);
  EXPECT_TRUE(lesson().painters.empty());
  person = painter;
  did(StartClock{painter, job, operation(0)});
  did(StartClock{painter, job, operation(1)});
  did(StopClock{painter});
  EXPECT_EQ(lesson().sprayed_ms, now_ms);
  EXPECT_EQ(lesson().painters, std::vector<PersonId>{painter}) << "prep is no spraying";
}

TEST_F(LessonTest, ACauseCountsWhenItIsSaidAndNotInDispute) {
  did(nib(500, 700));
  EXPECT_FALSE(lesson().cause_said);
  did(SetCause{job, {}});
  EXPECT_TRUE(lesson().cause_said);
  EXPECT_FALSE(lesson().cause);
  auto other = did(SetCause{job, job::DirtCause::Hose}).front();
  EXPECT_EQ(lesson().cause, job::DirtCause::Hose);
  other.order = {++count, {}, count};
  other.hash.bytes[0] = 250;
  other.payload.get<entries::CauseSet>().cause = job::DirtCause::Suit;
  apply(other);
  ASSERT_TRUE(car().cause->disputed);
  EXPECT_FALSE(lesson().cause_said);
}

}  // namespace
}  // namespace jambline::acts
