#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "trade/correction_plan.h"
#include "trade/rows.h"

namespace jambline::trade {
namespace {

PlanPanel panel(const char* name, std::vector<PlanMark> marks, Point_mm stands_at = {}) {
  PlanPanel out;
  out.panel = name;
  out.outline = {{0, 0}, {1200, 0}, {1200, 900}, {0, 900}};
  out.stands_at = stands_at;
  out.marks = std::move(marks);
  return out;
}
PlanMark nib(const char* name, double x_mm, double y_mm) {
  return {name, x_mm, y_mm, MarkWork::Nib, {}};
}
CorrectionPlan rounds_with(std::vector<PlanPanel> panels) {
  CorrectionPlan out;
  out.panels = std::move(panels);
  return out;
}
// What a circle keeps on the near side of a line that passes `off` from its center.
double cut_circle(double radius, double off) {
  return std::numbers::pi * radius * radius - radius * radius * std::acos(off / radius) +
         off * std::sqrt(radius * radius - off * off);
}
const PlanStation& last(const CorrectionPlanResult& plan) {
  return plan.stations.back();
}

TEST(PlanRounds, EachRoundGoesOverAllPanelsBeforeThePadIsChanged) {
  const auto plan = correction_plan(rounds_with({panel("a", {nib("1", 600, 450)}, {0, 0}),
                                                 panel("b", {nib("1", 600, 450)}, {5000, 0}),
                                                 panel("c", {nib("1", 600, 450)}, {2000, 0})}));
  ASSERT_TRUE(plan);
  ASSERT_EQ(plan->stations.size(), 15U);
  for (std::size_t i = 0; i < 15; ++i) {
    EXPECT_EQ(plan->stations[i].round, static_cast<Round>(i / 3));
    EXPECT_EQ(plan->stations[i].panel, (std::vector<std::string>{"a", "c", "b"})[i % 3]);
  }
  EXPECT_EQ(plan->changes, 4);
  EXPECT_DOUBLE_EQ(plan->walk_mm, 5 * 5000 + 4 * 5000);  // along, and back for each next round
  for (const PlanStation& one : plan->stations) {
    EXPECT_EQ(one.clean_down, one.round == Round::Refine) << "once, after the last sanding";
    EXPECT_EQ(one.tape_edges, one.round == Round::Compound) << "no tape for finishing";
  }
}

TEST(PlanRounds, OnePanelAtATimeWalksLessAndChangesMore) {
  CorrectionPlan in = rounds_with(
      {panel("a", {nib("1", 600, 450)}, {0, 0}), panel("b", {nib("1", 600, 450)}, {3000, 0})});
  in.one_panel_at_a_time = true;
  const auto plan = correction_plan(in);
  ASSERT_EQ(plan->stations.size(), 10U);
  EXPECT_EQ(plan->stations[4].panel, "a");
  EXPECT_EQ(plan->stations[5].panel, "b");
  EXPECT_EQ(plan->stations[5].round, Round::Level);
  EXPECT_EQ(plan->changes, 9);
  EXPECT_DOUBLE_EQ(plan->walk_mm, 3000);
}

TEST(PlanRounds, CirclesThatTouchAreOneArea) {
  CorrectionPlan in = rounds_with({panel("a", {nib("1", 600, 450), nib("2", 640, 450)})});
  EXPECT_EQ(correction_plan(in)->stations[0].areas.size(), 1U);
  in.panels[0].marks[1].x_mm = 641;
  const auto plan = correction_plan(in);
  EXPECT_EQ(plan->stations[0].areas.size(), 2U);
  EXPECT_EQ(plan->stations[1].areas.size(), 1U) << "wider circles meet in the next round";
}

TEST(PlanRounds, AreasStopShortOfAnEdgeAndABodyLine) {
  const auto at_edge = correction_plan(rounds_with({panel("a", {nib("1", 50, 450)})}));
  const double by_edge = cut_circle(150, 50 - 12);
  EXPECT_NEAR(last(*at_edge).areas[0].area_mm2, by_edge, 0.002 * by_edge);
  PlanPanel creased = panel("a", {nib("1", 600, 450)});
  creased.body_lines = {{{{0, 420}, {1200, 420}}}};
  const auto at_line = correction_plan(rounds_with({creased}));
  // Both sides of the line are worked on, a strip of 24 mm is not.
  const double whole = std::numbers::pi * 150 * 150;
  const double strip = cut_circle(150, 30 + 12) - cut_circle(150, 30 - 12);
  EXPECT_NEAR(last(*at_line).areas[0].area_mm2, whole - strip, 0.004 * whole);
}

TEST(PlanRounds, ByHandIsASpotOfItsOwn) {
  PlanPanel one = panel("a", {nib("edge", 5, 450), nib("open", 60, 450)});
  const auto plan = correction_plan(rounds_with({one}));
  for (const PlanStation& station : plan->stations)
    EXPECT_EQ(station.areas.size(), station.round == Round::Finish ? 2U : 1U);
  const auto& areas = last(*plan).areas;
  EXPECT_FALSE(areas[0].by_hand);
  EXPECT_EQ(areas[0].marks, std::vector<std::string>{"open"});
  EXPECT_TRUE(areas[1].by_hand);
  EXPECT_EQ(areas[1].marks, std::vector<std::string>{"edge"});
  EXPECT_NEAR(areas[1].area_mm2, cut_circle(20, 5), 0.02 * cut_circle(20, 5));
  one.marks = {nib("crease", 600, 428)};
  one.body_lines = {{{{0, 420}, {1200, 420}}}};
  const auto creased = correction_plan(rounds_with({one}));
  ASSERT_EQ(creased->stations.size(), 1U);
  EXPECT_TRUE(last(*creased).areas[0].by_hand);
}

TEST(PlanRounds, AFadeKeepsItsDistance) {
  PlanPanel one = panel("a", {nib("far", 475, 450), nib("near", 476, 450)});
  one.clear_fade = {{{{600, 0}, {600, 900}}}};
  const auto plan = correction_plan(rounds_with({one}));
  ASSERT_EQ(plan->left_out.size(), 1U);
  EXPECT_EQ(plan->left_out[0].mark, "near");
  EXPECT_EQ(plan->left_out[0].why, LeftOut::ClearFade);
}

TEST(PlanRounds, WhatNoRoundTakesOutIsLeftOutByName) {
  CorrectionPlan in =
      rounds_with({panel("a", {nib("1", 600, 450), {"2", 300, 450, MarkWork::Haze, {}}})});
  in.rounds.resize(3);
  const auto plan = correction_plan(in);
  ASSERT_EQ(plan->left_out.size(), 1U);
  EXPECT_EQ(plan->left_out[0].mark, "2");
  EXPECT_EQ(plan->left_out[0].why, LeftOut::NoRound);
}

TEST(PlanRounds, PadsAndTowelsAreCountedForEachRound) {
  std::vector<PlanMark> marks;
  for (int i = 0; i < 5; ++i)
    marks.push_back(
        {std::to_string(i), 200.0 + 400 * (i % 3), 200.0 + 400 * (i / 3), MarkWork::Haze, {}});
  const auto plan = correction_plan(rounds_with({panel("a", marks)}));
  ASSERT_EQ(plan->kit.size(), 1U);
  EXPECT_EQ(plan->kit[0].round, Round::Finish);
  EXPECT_EQ(plan->kit[0].pads, 2);    // 5 areas, 2.5 a pad
  EXPECT_EQ(plan->kit[0].towels, 2);  // 4 a towel
  EXPECT_FALSE(plan->advice[0].whole_panel);
}

TEST(PlanRounds, ASmallPanelIsDoneWhole) {
  PlanPanel small = panel("a", {nib("1", 150, 150)});
  small.outline = {{0, 0}, {300, 0}, {300, 300}, {0, 300}};
  const auto plan = correction_plan(rounds_with({small}));
  EXPECT_TRUE(plan->advice[0].whole_panel);
  EXPECT_GT(plan->advice[0].covered_percent, 35);
  // A nib's whole way: 2.5, 1.5, 1.5, 0.7 and 0.3; spreads add by their squares.
  EXPECT_NEAR(plan->advice[0].removal_um, 6.5, 1e-12);
  EXPECT_NEAR(plan->advice[0].removal_sd_um, std::sqrt(1 + 0.36 + 0.36 + 0.09 + 0.0144), 1e-12);
}

TEST(PlanRounds, PlasticIsSlower) {
  CorrectionPlan in = rounds_with({panel("a", {{"1", 600, 450, MarkWork::Haze, {}}})});
  const double metal = last(*correction_plan(in)).areas[0].minutes;
  EXPECT_NEAR(metal, 1.5 * std::numbers::pi * 150 * 150 / 90000, 1e-9);
  in.panels[0].plastic = true;
  EXPECT_NEAR(last(*correction_plan(in)).areas[0].minutes, metal / 0.7, 1e-9);
}

TEST(PlanRounds, WhatCannotBeIsRefusedByName) {
  const auto field = [](const CorrectionPlan& in) {
    const auto plan = correction_plan(in);
    return plan ? "" : plan.error().subject;
  };
  EXPECT_EQ(field(rounds_with({panel("a", {}), panel("a", {})})), "panels[1].panel");
  EXPECT_EQ(field(rounds_with({panel("a", {nib("1", 5, 5), nib("1", 50, 50)})})),
            "panels[0].marks[1].mark");
  EXPECT_EQ(field(rounds_with({panel("a", {nib("1", -5, 5)})})), "panels[0].marks[0]");
  CorrectionPlan backwards = rounds_with({panel("a", {})});
  std::swap(backwards.rounds[0], backwards.rounds[1]);
  EXPECT_EQ(field(backwards), "rounds[1].round");
}

TEST(ShortestWalk, AlongALineItGoesFromEndToEnd) {
  EXPECT_EQ(shortest_walk({{300, 0}, {0, 0}, {200, 0}, {100, 0}}),
            (std::vector<std::size_t>{0, 2, 3, 1}));
  EXPECT_TRUE(shortest_walk({}).empty());
  EXPECT_EQ(shortest_walk({{5, 5}}), std::vector<std::size_t>{0});
}

Rows rows() {
  return Rows({{0, 0}, {1000, 500}}, 5);
}

TEST(RowsOfAPanel, AreasOfPlainShapes) {
  Rows inside = rows();
  inside.add_inside({{{0, 0}, {1000, 0}, {1000, 500}, {400, 500}, {400, 200}, {0, 200}}});
  EXPECT_NEAR(inside.area_mm2(), 200 * 1000 + 300 * 600, 1e-6);
  Rows near = rows();
  near.add_near({{200, 250}, {800, 250}}, 50);
  EXPECT_NEAR(near.area_mm2(), 600 * 100 + std::numbers::pi * 2500, 40);
  Rows slanted = rows();
  slanted.add_near({{300, 100}, {700, 400}}, 50);
  EXPECT_NEAR(slanted.area_mm2(), 500 * 100 + std::numbers::pi * 2500, 40);
  Rows circle = rows();
  circle.add_circle({500, 250}, 200);
  circle.add_circle({500, 250}, 100);
  EXPECT_NEAR(circle.area_mm2(), std::numbers::pi * 40000, 150);
}

TEST(RowsOfAPanel, WhatTwoShareAndWhatIsLeft) {
  Rows left = rows(), right = rows();
  left.add_inside({{{0, 0}, {600, 0}, {600, 500}, {0, 500}}});
  right.add_inside({{{400, 0}, {1000, 0}, {1000, 300}, {400, 300}}});
  EXPECT_NEAR(left.common_area_mm2(right), 200 * 300, 1e-6);
  EXPECT_NEAR(left.without(right).area_mm2(), 600 * 500 - 200 * 300, 1e-6);
  EXPECT_NEAR(left.without(left).area_mm2(), 0, 1e-9);
  EXPECT_NEAR(left.without(rows()).area_mm2(), 300000, 1e-6);
}

TEST(RowsOfAPanel, WhatNothingAddsIsNothing) {
  Rows empty = rows();
  empty.add_inside({});
  empty.add_near(Polyline{}, 50);
  EXPECT_DOUBLE_EQ(empty.area_mm2(), 0);
}

}  // namespace
}  // namespace jambline::trade
