#include "trade/panel_shape.h"

#include <gtest/gtest.h>

namespace jambline::trade {
namespace {

// A panel 1000 wide, 400 high, with a wheel opening 300 wide and 350 high.
const Polygon shaped{
    {{0, 0}, {300, 0}, {300, 350}, {600, 350}, {600, 0}, {1000, 0}, {1000, 400}, {0, 400}}};

TEST(PanelShape, MirroringTwiceGivesThePanelBack) {
  PanelShape shape;
  shape.outline = {{{0, 0}, {200, 0}, {180, 90}, {0, 100}}};
  shape.masked_edges = {{"lamp", {{200, 0}, {180, 90}}}};
  shape.seams = {{{0, 0}, {0, 100}}};
  shape.body_lines = {{{10, 50}, {150, 50}}};
  shape.reach_over = {{{{20, 10}, {40, 10}, {40, 30}}}};
  const PanelShape once = mirrored(shape);
  EXPECT_GT(signed_area_mm2(once.outline), 0);
  EXPECT_GT(signed_area_mm2(once.reach_over.front()), 0);
  EXPECT_EQ(once.masked_edges.front().line, (Polyline{{0, 0}, {20, 90}}));
  EXPECT_EQ(once.seams.front(), (Polyline{{200, 0}, {200, 100}}));
  const PanelShape twice = mirrored(once);
  EXPECT_EQ(twice.outline, shape.outline);
  EXPECT_EQ(twice.masked_edges.front().line, shape.masked_edges.front().line);
  EXPECT_EQ(twice.body_lines, shape.body_lines);
  EXPECT_EQ(twice.reach_over, shape.reach_over);
}

TEST(PanelShape, AStripIsAsDeepAsAskedAndEndsAtAnOpening) {
  const auto strips = edge_strip(shaped, Side::Upper, 100, 0, 1000);
  ASSERT_EQ(strips.size(), 1U);
  // 700 mm at full depth, 300 mm over the opening where only 50 mm are left.
  EXPECT_NEAR(area_mm2(strips.front()), 700 * 100 + 300 * 50, 10);
  EXPECT_GT(signed_area_mm2(strips.front()), 0);
  EXPECT_TRUE(contains(strips.front(), {100, 350}));
  EXPECT_FALSE(contains(strips.front(), {450, 340}));
  EXPECT_TRUE(contains(strips.front(), {450, 360}));
}

TEST(PanelShape, AStripOverTheLowerEdgeFollowsIt) {
  const auto strips = edge_strip(shaped, Side::Lower, 30, 0, 1000);
  ASSERT_EQ(strips.size(), 3U);  // left foot, over the opening, right foot
  double area = 0;
  for (const Polygon& strip : strips) {
    EXPECT_GT(signed_area_mm2(strip), 0);
    area += area_mm2(strip);
  }
  EXPECT_NEAR(area, 1000 * 30, 10);
  EXPECT_TRUE(edge_strip(shaped, Side::Lower, 30, 1200, 1300).empty());
}

TEST(PanelShape, AnOverhangingEdgeGivesPieces) {
  const Polygon overhang{{{200, 0},
                          {600, 0},
                          {600, 300},
                          {0, 300},
                          {0, 250},
                          {200, 250},
                          {200, 100},
                          {100, 100},
                          {100, 50},
                          {200, 50}}};
  const auto strips = edge_strip(overhang, Side::Upper, 20, 0, 600);
  ASSERT_EQ(strips.size(), 1U);
  EXPECT_NEAR(area_mm2(strips.front()), 600 * 20, 5);
  const Polygon step{
      {{0, 0}, {300, 0}, {300, 200}, {250, 200}, {250, 150}, {200, 150}, {200, 50}, {0, 50}}};
  EXPECT_EQ(edge_strip(step, Side::Upper, 40, 0, 300).size(), 1U);
}

}  // namespace
}  // namespace jambline::trade
