// The dirt of a car as the test against chance asks for it, from what people did on the car.
#include "folds/dirt_of_car.h"

#include "base/json.h"
#include "tests/acts/one_device.h"
#include "trade/draws.h"
#include "trade/points.h"

namespace jambline::acts {
namespace {

using trade::DirtSign;

class DirtOfCarTest : public DecideTest {
 protected:
  trade::DirtPattern dirt(std::optional<trade::FlatHistory> history = {}) {
    return folds::dirt_of_car(car(), job::pattern(job::BodyShape::FourDoorSedan), history);
  }
};

TEST_F(DirtOfCarTest, OnlyDirtFoundWhenItWasLookedOverCounts) {
  did(nib(700, 700));
  PlaceMark other = nib(500, 700);
  other.defect = job::DefectKind::Crater;
  did(other);
  other.defect = job::DefectKind::OrangePeel;
  did(other);
  did(EndMark{job, panel(Panel::Hood).marks.front().mark, job::MarkEnd::Gone});
  did(nib(650, 700));
  did(WithdrawMark{job, panel(Panel::Hood).marks.back().mark});
  did(FinishStage{job, job::Stage::Assemble, true, job::WithoutShots::NotNeeded});
  did(nib(600, 700));
  const auto all = dirt();
  ASSERT_EQ(all.panels.size(), 1U) << "the bumper cover is not looked at";
  EXPECT_EQ(all.panels[0].panel, "hood");
  EXPECT_EQ(all.panels[0].marks, (std::vector<trade::Point_mm>{{500, 700}, {700, 700}}));
}

TEST_F(DirtOfCarTest, PanelsCountOnceTheyAreLookedAtAndTheirFaceWasSprayed) {
  did(nib(700, 700));
  did(GiveVerdict{job, Panel::FrontBumper, Verdict::Clean, false, {}});
  ASSERT_EQ(dirt().panels.size(), 2U);
  did(PlanPanel{job, {Panel::FrontBumper, false, {}, {}, job::Treatment::NotRefinished}});
  EXPECT_EQ(dirt().panels.size(), 1U);
}

TEST_F(DirtOfCarTest, APanelBringsItsEdgesSeamsAndAllItsStripsToLeanOver) {
  did(nib(700, 700));
  did(PlanPanel{job, {Panel::FrontBumper, false, trade::Substrate::Plastic, {}, {}}});
  did(GiveVerdict{job, Panel::FrontBumper, Verdict::Clean, false, {}});
  for (const auto& one : dirt().panels) {
    const bool hood = one.panel == "hood";
    const auto& shape = job::pattern(job::BodyShape::FourDoorSedan)
                            .find(hood ? Panel::Hood : Panel::FrontBumper)
                            ->shape;
    EXPECT_EQ(one.lie, hood ? trade::Lie::Flat : trade::Lie::Upright);
    EXPECT_EQ(one.plastic, !hood);
    EXPECT_EQ(one.sprayed, 0);
    EXPECT_EQ(one.masked_edges.size(), shape.masked_edges.size());
    EXPECT_EQ(one.seams.size(), shape.seams.size());
    EXPECT_EQ(one.reach_strips.size(), shape.reach_over.size());
    if (hood) {
      EXPECT_EQ(one.reach_strips.size(), 2U) << "both sides of it are leaned over";
    }
  }
}

TEST_F(DirtOfCarTest, DirtAllOverBringsNoMarks) {
  did(nib(700, 700));
  did(SayDirtAllOver{job, Panel::Hood, job::DirtClass::From10To20});
  EXPECT_TRUE(dirt().panels[0].all_over);
  EXPECT_TRUE(dirt().panels[0].marks.empty());
}

TEST_F(DirtOfCarTest, HistoryIsThatOfTheOtherCountedCars) {
  folds::Lesson own, other, open;
  own.job = job;
  own.counted = other.counted = true;
  other.job.bytes[0] = open.job.bytes[1] = 9;
  own.flat_nibs = open.flat_nibs = 100;
  other.flat_nibs = 4;
  other.flat_m2 = 2.5;
  other.upright_nibs = 3;
  other.upright_m2 = 7.5;
  EXPECT_FALSE(folds::flat_history({own, open}, job));
  const auto history = folds::flat_history({own, other, open, other}, job);
  ASSERT_TRUE(history);
  EXPECT_EQ(history->flat_marks, 8);
  EXPECT_EQ(history->upright_marks, 6);
  EXPECT_DOUBLE_EQ(history->flat_m2, 5);
  EXPECT_DOUBLE_EQ(history->upright_m2, 15);
}

// Every panel of every body is taken, and the order in which marks and panels were found changes
// no chance.
TEST_F(DirtOfCarTest, TheOrderOfMarksAndPanelsChangesNothing) {
  trade::Draws draws(4206);
  for (const auto shape :
       {job::BodyShape::TwoDoorHatchback, job::BodyShape::FourDoorSedan, job::BodyShape::SuvWagon,
        job::BodyShape::CrewCabPickup, job::BodyShape::CargoVan}) {
    const auto& body = job::pattern(shape);
    folds::CarView view;
    view.job.bytes[15] = 7;
    view.body = shape;
    for (const auto& placed : body.panels) {
      folds::PanelView& panel = view.panels.emplace_back();
      panel.plan.panel = placed.panel;
      panel.verdict = Verdict::ToCorrect;
      const trade::PointsInside inside(placed.shape.outline);
      for (int i = 0; i < 8; ++i) {
        const auto at = inside.draw(draws);
        folds::MarkView& mark = panel.marks.emplace_back();
        mark.x_mm = at.x_mm;
        mark.y_mm = at.y_mm;
        mark.stage = job::Stage::Inspect;
      }
    }
    auto first = folds::dirt_of_car(view, body, {});
    first.patterns = 99;
    const auto judged = trade::dirt_pattern(first);
    ASSERT_TRUE(judged) << judged.error().subject;
    EXPECT_EQ(judged->panels.size(), body.panels.size());
    draws.shuffle(view.panels);
    for (auto& panel : view.panels) draws.shuffle(panel.marks);
    auto second = folds::dirt_of_car(view, body, {});
    second.patterns = 99;
    const auto again = trade::dirt_pattern(second);
    ASSERT_TRUE(again);
    EXPECT_EQ(to_json(*again), to_json(*judged));
  }
}

TEST_F(DirtOfCarTest, TheSeedHangsOnTheJobAlone) {
  did(nib(700, 700));
  const auto before = dirt().seed;
  did(nib(500, 700));
  EXPECT_EQ(dirt().seed, before);
  folds::CarView other = car();
  other.job.bytes[15] ^= 1U;
  EXPECT_NE(folds::dirt_of_car(other, job::pattern(other.body), {}).seed, before);
}

}  // namespace
}  // namespace jambline::acts
