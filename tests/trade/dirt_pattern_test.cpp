#include "trade/dirt_pattern.h"

#include <cmath>
#include <gtest/gtest.h>

#include "trade/dirt_scan.h"

namespace jambline::trade {
namespace {

DirtPanel square(const char* name, std::vector<Point_mm> marks) {
  DirtPanel out;
  out.panel = name;
  out.outline = {{0, 0}, {1000, 0}, {1000, 1000}, {0, 1000}};
  out.lie = Lie::Upright;
  out.marks = std::move(marks);
  return out;
}

// Far from each other, so that neither spacing nor clusters say anything.
std::vector<Point_mm> spread(int count) {
  std::vector<Point_mm> out;
  for (int i = 0; i < count; ++i) out.push_back({140.0 + 240 * (i % 4), 140.0 + 240 * (i / 4)});
  return out;
}

DirtPattern car(std::vector<DirtPanel> panels) {
  DirtPattern out;
  out.panels = std::move(panels);
  return out;
}

const DirtEvidence* find(const DirtPatternResult& result, DirtSign sign) {
  for (const auto& one : result.evidence)
    if (one.sign == sign) return &one;
  return nullptr;
}

TEST(DirtPattern, FiveMarksOnAPanelAreTooFewToSay) {
  const auto few = dirt_pattern(car({square("hood", spread(5))}));
  ASSERT_TRUE(few);
  EXPECT_EQ(few->word, DirtWord::TooFew);
  EXPECT_TRUE(few->evidence.empty());
  EXPECT_TRUE(few->panels[0].too_few);
  const auto enough = dirt_pattern(car({square("hood", spread(6))}));
  EXPECT_FALSE(enough->panels[0].too_few);
  EXPECT_EQ(enough->word, DirtWord::LooksLikeChance);
}

TEST(DirtPattern, ADirtClassKeepsAPanelOutOfTheScan) {
  DirtPanel all_over = square("roof", spread(12));
  all_over.all_over = true;
  const auto result = dirt_pattern(car({all_over}));
  EXPECT_EQ(result->word, DirtWord::TooFew);
  EXPECT_TRUE(result->panels[0].too_few);
}

TEST(DirtPattern, MarksOnAHeapPointToIt) {
  std::vector<Point_mm> marks = spread(6);
  for (int i = 0; i < 5; ++i) marks.push_back({500.0 + 5 * i, 500});
  const auto result = dirt_pattern(car({square("hood", marks)}));
  EXPECT_EQ(result->word, DirtWord::Points);
  const auto* cluster = find(*result, DirtSign::Cluster);
  ASSERT_TRUE(cluster && cluster->cluster);
  EXPECT_DOUBLE_EQ(cluster->chance, 1.0 / 1000);
  EXPECT_EQ(cluster->cluster->marks, 5);
  EXPECT_DOUBLE_EQ(cluster->cluster->radius_mm, 50);
  EXPECT_NEAR(cluster->cluster->center.x_mm, 510, 10.1);
  EXPECT_NEAR(cluster->expected, 11 * 3.14159 * 50 * 50 / 1e6, 0.01);
  // DBSCAN names the same five.
  EXPECT_EQ(result->panels[0].groups, (std::vector<int>{-1, -1, -1, -1, -1, -1, 0, 0, 0, 0, 0}));
}

// A band of 50 mm along one side of a square meter is a twentieth of it.
TEST(DirtPattern, MarksAlongAMaskedEdgeAndASeamAreCountedAgainstTheirShare) {
  std::vector<Point_mm> marks;
  for (int i = 0; i < 6; ++i) marks.push_back({100.0 + 160 * i, 30});
  DirtPanel masked = square("left front door", marks);
  masked.masked_edges = {{{{0, 0}, {1000, 0}}}};
  masked.seams = {{{{0, 1000}, {1000, 1000}}}};
  const auto result = dirt_pattern(car({masked}));
  const auto* edge = find(*result, DirtSign::MaskedEdge);
  ASSERT_TRUE(edge);
  EXPECT_DOUBLE_EQ(edge->seen, 6);
  EXPECT_NEAR(edge->expected, 0.3, 1e-9);
  EXPECT_NEAR(edge->chance, std::pow(0.05, 6), 1e-12);
  EXPECT_EQ(result->word, DirtWord::Points);
  EXPECT_EQ(result->evidence.front().sign, DirtSign::MaskedEdge);
  const auto* seam = find(*result, DirtSign::Seam);
  ASSERT_TRUE(seam);
  EXPECT_DOUBLE_EQ(seam->chance, 1);
}

TEST(DirtPattern, MarksUnderTheArmAreCountedAgainstTheStrip) {
  std::vector<Point_mm> marks = spread(4);  // all in the lowest fifth and a half
  marks.push_back({260, 900});
  marks.push_back({740, 640});
  DirtPanel roof = square("roof", marks);
  roof.reach_strips = {{{{0, 0}, {1000, 0}, {1000, 100}, {0, 100}}},
                       {{{0, 100}, {1000, 100}, {1000, 200}, {0, 200}}}};
  const auto result = dirt_pattern(car({roof}));
  const auto* strip = find(*result, DirtSign::ReachStrip);
  ASSERT_TRUE(strip);
  // At least 4 of 6 at 0.2: 15 * 0.2^4 * 0.8^2 + 6 * 0.2^5 * 0.8 + 0.2^6.
  EXPECT_NEAR(strip->chance, 15 * 0.0016 * 0.64 + 6 * 0.00032 * 0.8 + 0.000064, 1e-9);
}

TEST(DirtPattern, FlatIsOnlyComparedWithThisShopsOwnHistory) {
  DirtPanel hood = square("hood", spread(8));
  hood.lie = Lie::Flat;
  DirtPattern in = car({hood, square("left front door", {})});
  EXPECT_EQ(find(*dirt_pattern(in), DirtSign::FlatOverUpright), nullptr);
  EXPECT_FALSE(dirt_pattern(in)->flat_compared);
  // As many on both in the past: 8 of 8 on the flat one is C(16,8) of C(24,8).
  in.history = FlatHistory{8, 10, 8, 10};
  const auto result = dirt_pattern(in);
  EXPECT_TRUE(result->flat_compared);
  const auto* flat = find(*result, DirtSign::FlatOverUpright);
  ASSERT_TRUE(flat);
  EXPECT_NEAR(flat->chance, 12870.0 / 735471, 1e-12);
  // A long history of five times as many says that this is nothing new.
  in.history = FlatHistory{5000, 10, 1000, 10};
  EXPECT_GT(find(*dirt_pattern(in), DirtSign::FlatOverUpright)->chance, 0.2);
}

TEST(DirtPattern, PlasticIsHeldAgainstMetalThatLiesAlike) {
  DirtPanel bumper = square("front bumper", spread(8));
  bumper.plastic = true;
  DirtPanel hood = square("hood", {});
  hood.lie = Lie::Flat;
  // Only a flat panel is of metal: nothing that lies like the bumper.
  EXPECT_EQ(find(*dirt_pattern(car({bumper, hood})), DirtSign::PlasticOverMetal), nullptr);
  const auto result = dirt_pattern(car({bumper, hood, square("left front door", {})}));
  const auto* plastic = find(*result, DirtSign::PlasticOverMetal);
  ASSERT_TRUE(plastic);
  EXPECT_NEAR(plastic->chance, 1.0 / 256, 1e-12);
}

TEST(DirtPattern, FirstPanelsAgainstLastOnes) {
  std::vector<DirtPanel> panels;
  for (int i = 0; i < 4; ++i) {
    panels.push_back(square(("panel " + std::to_string(i)).c_str(), spread(i < 2 ? 5 : 0)));
    panels.back().sprayed = i + 1;
  }
  const auto result = dirt_pattern(car(panels));
  ASSERT_TRUE(find(*result, DirtSign::FirstPanels));
  EXPECT_NEAR(find(*result, DirtSign::FirstPanels)->chance, 1.0 / 1024, 1e-12);
  EXPECT_DOUBLE_EQ(find(*result, DirtSign::LastPanels)->chance, 1);
  EXPECT_EQ(result->word, DirtWord::Points);
  EXPECT_EQ(result->evidence.front().sign, DirtSign::FirstPanels);
}

TEST(DirtPattern, WhatCannotBeIsRefusedByName) {
  const auto field = [](const DirtPattern& in) {
    const auto result = dirt_pattern(in);
    return result ? "" : result.error().subject;
  };
  EXPECT_EQ(field(car({square("hood", {{1200, 5}})})), "panels[0].marks[0]");
  EXPECT_EQ(field(car({square("hood", {}), square("hood", {})})), "panels[1].panel");
  EXPECT_EQ(field(car({})), "panels");
}

TEST(DirtScan, AMarkOnTheCircleIsInside) {
  Draws draws(1);
  const DirtPanel panel = square("hood", {});
  const DirtScan scan = scan_dirt(
      {panel.outline}, {{450, 500}, {500, 500}, {550, 500}, {50, 50}, {900, 100}}, 99, draws);
  EXPECT_DOUBLE_EQ(scan.cluster_radius_mm, 50);
  EXPECT_EQ(scan.cluster_marks, 3);
  EXPECT_DOUBLE_EQ(scan.cluster_center.x_mm, 500);
}

TEST(DirtScan, MarksOnOneSpotAreAsCloseAsCanBe) {
  Draws draws(1);
  const DirtPanel panel = square("hood", {});
  const DirtScan scan =
      scan_dirt({panel.outline}, std::vector<Point_mm>(6, Point_mm{500, 500}), 99, draws);
  EXPECT_DOUBLE_EQ(scan.mean_nearest_mm, 0);
  EXPECT_DOUBLE_EQ(scan.spacing_chance, 0.01);
  EXPECT_DOUBLE_EQ(scan.cluster_chance, 0.01);
}

TEST(DirtScan, ARegularGridIsNoCluster) {
  Draws draws(1);
  const DirtPanel panel = square("hood", {});
  const DirtScan scan = scan_dirt({panel.outline}, spread(16), 199, draws);
  EXPECT_DOUBLE_EQ(scan.mean_nearest_mm, 240);
  EXPECT_GT(scan.spacing_chance, 0.99);
  EXPECT_GT(scan.cluster_chance, 0.5);
  // 0.5 / sqrt(density) and a little more, for the edges: Clark and Evans 1954.
  EXPECT_NEAR(scan.expected_nearest_mm, 140, 15);
}

}  // namespace
}  // namespace jambline::trade
