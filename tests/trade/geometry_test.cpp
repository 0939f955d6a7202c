#include "trade/geometry.h"

#include <cmath>
#include <gtest/gtest.h>

namespace jambline::trade {
namespace {

const Polygon unit_square{{{0, 0}, {100, 0}, {100, 100}, {0, 100}}};
const Polygon notched{
    {{0, 0}, {40, 0}, {40, 50}, {60, 50}, {60, 0}, {100, 0}, {100, 100}, {0, 100}}};
const Polygon bow_tie{{{0, 0}, {100, 100}, {100, 0}, {0, 100}}};

TEST(Geometry, AreaIsTheSameInBothOrders) {
  EXPECT_DOUBLE_EQ(area_mm2(unit_square), 10'000);
  EXPECT_DOUBLE_EQ(signed_area_mm2(unit_square), 10'000);
  Polygon back = unit_square;
  std::swap(back.corners[1], back.corners[3]);
  EXPECT_DOUBLE_EQ(signed_area_mm2(back), -10'000);
  EXPECT_DOUBLE_EQ(area_mm2(notched), 9'000);
  EXPECT_DOUBLE_EQ(area_mm2({}), 0);
}

TEST(Geometry, TheBoundaryCountsAsInside) {
  for (const Point_mm& corner : notched.corners) EXPECT_TRUE(contains(notched, corner));
  EXPECT_TRUE(contains(notched, {50, 50}));
  EXPECT_TRUE(contains(notched, {40, 20}));
  EXPECT_TRUE(contains(notched, {20, 20}));
  EXPECT_FALSE(contains(notched, {50, 49}));
  EXPECT_FALSE(contains(notched, {50, 0}));
  EXPECT_FALSE(contains(notched, {-0.001, 50}));
  EXPECT_FALSE(contains({}, {0, 0}));
}

TEST(Geometry, ARayThroughACornerIsCountedOnce) {
  const Polygon diamond{{{0, -10}, {10, 0}, {0, 10}, {-10, 0}}};
  EXPECT_TRUE(contains(diamond, {-5, 0}));
  EXPECT_FALSE(contains(diamond, {-15, 0}));
  EXPECT_FALSE(contains(diamond, {-5, 10}));
}

TEST(Geometry, DistancesToSegmentLineAndEdge) {
  EXPECT_DOUBLE_EQ(distance_to_segment_mm({50, 30}, {0, 0}, {100, 0}), 30);
  EXPECT_DOUBLE_EQ(distance_to_segment_mm({103, 4}, {0, 0}, {100, 0}), 5);
  EXPECT_DOUBLE_EQ(distance_to_segment_mm({3, 4}, {0, 0}, {0, 0}), 5);
  EXPECT_DOUBLE_EQ(distance_to_line_mm({120, 50}, {{0, 0}, {100, 0}, {100, 100}}), 20);
  EXPECT_TRUE(std::isinf(distance_to_line_mm({0, 0}, {})));
  EXPECT_DOUBLE_EQ(distance_to_edge_mm({-7, 50}, unit_square), 7);  // the edge that closes
  EXPECT_DOUBLE_EQ(distance_to_edge_mm({50, 40}, unit_square), 40);
  EXPECT_DOUBLE_EQ(length_mm({{0, 0}, {3, 4}, {3, 10}}), 11);
}

TEST(Geometry, GapIsZeroForTouchingCrossingAndNested) {
  const auto moved = [](double by_mm) {
    return Placement{false, 0, 0, {by_mm, 0}}.apply(unit_square);
  };
  EXPECT_DOUBLE_EQ(gap_mm(unit_square, moved(130)), 30);
  EXPECT_DOUBLE_EQ(gap_mm(unit_square, moved(100)), 0);
  EXPECT_DOUBLE_EQ(gap_mm(unit_square, moved(50)), 0);
  EXPECT_DOUBLE_EQ(gap_mm(unit_square, {{{40, 40}, {60, 40}, {50, 60}}}), 0);
  EXPECT_DOUBLE_EQ(gap_mm({{{40, 40}, {60, 40}, {50, 60}}}, unit_square), 0);
  EXPECT_DOUBLE_EQ(gap_mm(notched, {{{48, 10}, {52, 10}, {52, 20}, {48, 20}}}), 8);
}

TEST(Geometry, CrossingsAreFound) {
  EXPECT_FALSE(crosses_itself(unit_square));
  EXPECT_FALSE(crosses_itself(notched));
  EXPECT_TRUE(crosses_itself(bow_tie));
  EXPECT_TRUE(crosses_itself({{{0, 0}, {100, 0}}}));
  EXPECT_TRUE(crosses_itself({{{0, 0}, {100, 0}, {100, 0}, {50, 80}}}));           // a corner twice
  EXPECT_TRUE(crosses_itself({{{0, 0}, {100, 0}, {50, 0}, {50, 80}}}));            // folds back
  EXPECT_TRUE(crosses_itself({{{0, 0}, {100, 0}, {100, 90}, {50, 0}, {0, 90}}}));  // touches
}

TEST(Geometry, BoundsHoldAllPoints) {
  const Box_mm box = bounds({{3, -2}, {-1, 5}, {0, 0}});
  EXPECT_EQ(box, (Box_mm{{-1, -2}, {3, 5}}));
  EXPECT_DOUBLE_EQ(box.width_mm(), 4);
  EXPECT_DOUBLE_EQ(box.height_mm(), 7);
  EXPECT_EQ(bounds({}), Box_mm{});
}

TEST(Geometry, QuarterTurnsAreExactAndMirroringComesFirst) {
  EXPECT_EQ((Placement{false, 1, 0, {0, 0}}.apply(Point_mm{3, 1})), (Point_mm{-1, 3}));
  EXPECT_EQ((Placement{false, -1, 0, {0, 0}}.apply(Point_mm{3, 1})), (Point_mm{1, -3}));
  EXPECT_EQ((Placement{false, 6, 0, {5, 5}}.apply(Point_mm{3, 1})), (Point_mm{2, 4}));
  EXPECT_EQ((Placement{true, 1, 0, {0, 0}}.apply(Point_mm{3, 1})), (Point_mm{-1, -3}));
  const Point_mm turned = Placement{false, 0, 30, {0, 0}}.apply(Point_mm{10, 0});
  EXPECT_NEAR(turned.x_mm, 8.660254037844386, 1e-12);
  EXPECT_NEAR(turned.y_mm, 5, 1e-12);
}

}  // namespace
}  // namespace jambline::trade
