#include "trade/correction_plan.h"

#include <gtest/gtest.h>
#include <numbers>

namespace jambline::trade {
namespace {

PlanPanel door(std::vector<PlanMark> marks) {
  PlanPanel out;
  out.panel = "left front door";
  out.outline = {{0, 0}, {1000, 0}, {1000, 700}, {0, 700}};
  out.marks = std::move(marks);
  return out;
}

CorrectionPlan with(std::vector<PlanPanel> panels) {
  CorrectionPlan out;
  out.panels = std::move(panels);
  return out;
}

std::vector<Round> rounds_of(const CorrectionPlanResult& plan) {
  std::vector<Round> out;
  for (const auto& one : plan.stations) out.push_back(one.round);
  return out;
}

TEST(CorrectionPlan, ANibGoesThroughEveryRoundFromLevelToFinish) {
  const auto out = correction_plan(with({door({{"1", 500, 350, MarkWork::Nib, {}}})}));
  ASSERT_TRUE(out);
  EXPECT_EQ(rounds_of(*out), (std::vector{Round::Level, Round::Refine, Round::Compound,
                                          Round::Polish, Round::Finish}));
  EXPECT_EQ(out->changes, 4);
  // A circle of 20 mm, away from every edge.
  EXPECT_NEAR(out->stations[0].areas[0].area_mm2, 400 * std::numbers::pi, 1e-6);
  EXPECT_TRUE(out->stations[1].clean_down);
  EXPECT_FALSE(out->stations[0].clean_down);
  EXPECT_TRUE(out->stations[2].tape_edges);
  EXPECT_FALSE(out->stations[4].tape_edges);
}

TEST(CorrectionPlan, ATestSpotThatAMilderRoundClearedSparesTheCoarserOnes) {
  const auto out = correction_plan(with({door({{"1", 500, 350, MarkWork::Nib, Round::Polish}})}));
  EXPECT_EQ(rounds_of(*out), (std::vector{Round::Polish, Round::Finish}));
  EXPECT_NEAR(out->advice[0].removal_um, 1.0, 1e-12);  // 0.7 and 0.3
}

TEST(CorrectionPlan, MatteAndAClearFadeAreLeftOutByName) {
  PlanPanel matte = door({{"1", 500, 350, MarkWork::Nib, {}}});
  matte.may_be_cut = false;
  PlanPanel blend = door({{"2", 850, 350, MarkWork::Nib, {}}, {"3", 200, 350, MarkWork::Nib, {}}});
  blend.panel = "left quarter panel";
  blend.clear_fade = {{{{900, 0}, {900, 700}}}};
  const auto out = correction_plan(with({matte, blend}));
  ASSERT_TRUE(out);
  ASSERT_EQ(out->left_out.size(), 2U);
  EXPECT_EQ(out->left_out[0].why, LeftOut::DoNotCut);
  EXPECT_EQ(out->left_out[1].mark, "2");
  EXPECT_EQ(out->left_out[1].why, LeftOut::ClearFade);
  for (const auto& station : out->stations) EXPECT_EQ(station.panel, "left quarter panel");
}

TEST(CorrectionPlan, NearAnEdgeByHandAndFinestOnly) {
  const auto out = correction_plan(with({door({{"1", 5, 350, MarkWork::Run, {}}})}));
  ASSERT_EQ(out->stations.size(), 1U);
  EXPECT_EQ(out->stations[0].round, Round::Finish);
  EXPECT_TRUE(out->stations[0].areas[0].by_hand);
}

TEST(CorrectionPlan, NineMarksAreAWholePanel) {
  std::vector<PlanMark> marks;
  for (int i = 0; i < 8; ++i)
    marks.push_back({std::to_string(i), 100.0 + 100 * i, 350, MarkWork::Haze, Round::Finish});
  CorrectionPlan in = with({door(marks)});
  in.rounds = {{Round::Finish, 30, 1.5, 0.3, 0.12, {}, 0}};
  EXPECT_FALSE(correction_plan(in)->advice[0].whole_panel);
  in.panels[0].marks.push_back({"8", 900, 350, MarkWork::Haze, {}});
  EXPECT_TRUE(correction_plan(in)->advice[0].whole_panel);
}

TEST(CorrectionPlan, OwnMinutesCountHalfFromTenAreas) {
  CorrectionPlan in = with({door({{"1", 500, 350, MarkWork::Haze, {}}})});
  in.rounds = {{Round::Finish, 150, 2, 0.3, 0.12, {}, 0}};
  const double usual = correction_plan(in)->stations[0].areas[0].minutes;
  in.rounds[0].own_min_per_area = 4;
  in.rounds[0].own_areas = 10;
  EXPECT_NEAR(correction_plan(in)->stations[0].areas[0].minutes, usual * 1.5, 1e-9);
}

TEST(CorrectionPlan, TheBasisOpensEveryNumberThatWentIn) {
  const auto out = correction_plan(with({door({{"1", 500, 350, MarkWork::Nib, {}}})}));
  for (const char* name : {"keep off edges and body lines", "areas a pad", "areas a towel",
                           "level, radius", "finish, removal", "minutes", "walk"})
    EXPECT_NE(out->basis.find(name), nullptr) << name;
}

}  // namespace
}  // namespace jambline::trade
