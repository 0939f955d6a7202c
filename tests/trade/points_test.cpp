#include "trade/points.h"

#include <cmath>
#include <gtest/gtest.h>

namespace jambline::trade {
namespace {

TEST(Points, NearestNeighboursOfATriangle) {
  const std::vector<Point_mm> points{{0, 0}, {3, 0}, {3, 4}};
  EXPECT_EQ(nearest_distances(points), (std::vector{3.0, 3.0, 4.0}));
  EXPECT_DOUBLE_EQ(mean_nearest(points), 10.0 / 3);
  // 0.5 / sqrt(3 / 12) = 1
  EXPECT_DOUBLE_EQ(clark_evans_index(points, 12), 10.0 / 3);
}

TEST(Points, FewerThanTwoHaveNoSpacing) {
  EXPECT_EQ(mean_nearest({}), 0);
  EXPECT_EQ(mean_nearest({{5, 5}}), 0);
  EXPECT_EQ(nearest_distances({{5, 5}}), std::vector{0.0});
  EXPECT_EQ(mean_nearest({{5, 5}, {5, 5}}), 0);
}

TEST(Points, AChainIsOneGroupAndAStragglerNone) {
  std::vector<Point_mm> points;
  for (int i = 0; i < 5; ++i) points.push_back({100.0 * i, 0});
  points.push_back({1000, 0});
  EXPECT_EQ(dbscan_groups(points, 100, 3), (std::vector{0, 0, 0, 0, 0, no_group}));
  EXPECT_EQ(dbscan_groups(points, 99.999, 3), std::vector<int>(6, no_group));
  // Alone, a point is a group when one is enough: it counts itself.
  EXPECT_EQ(dbscan_groups(points, 99, 1), (std::vector{0, 1, 2, 3, 4, 5}));
}

TEST(Points, AnEdgePointBetweenTwoGroupsJoinsTheFirst) {
  // Two cores with two of their own each, and one point that both reach.
  const std::vector<Point_mm> points{{0, 0}, {-1, 0}, {0, 1}, {2, 0}, {4, 0}, {5, 0}, {4, 1}};
  EXPECT_EQ(dbscan_groups(points, 2, 4), (std::vector{0, 0, 0, 0, 1, 1, 1}));
}

TEST(Points, TheOrderOfCornersDoesNotMatter) {
  const Polygon there{{{0, 0}, {10, 0}, {10, 10}, {6, 3}, {0, 10}}};
  Polygon back = there;
  std::reverse(back.corners.begin(), back.corners.end());
  EXPECT_NEAR(PointsInside(there).area(), area_mm2(there), 1e-9);
  EXPECT_NEAR(PointsInside(back).area(), area_mm2(there), 1e-9);
}

TEST(Points, DrawnPointsLieInsideAndEverywhereAlike) {
  // An L of three equal squares.
  const Polygon corner{{{0, 0}, {20, 0}, {20, 10}, {10, 10}, {10, 20}, {0, 20}}};
  const PointsInside inside(corner);
  EXPECT_DOUBLE_EQ(inside.area(), 300);
  Draws draws(4);
  int right = 0, upper = 0;
  const int times = 30000;
  for (int i = 0; i < times; ++i) {
    const Point_mm one = inside.draw(draws);
    EXPECT_TRUE(contains(corner, one)) << one.x_mm << " " << one.y_mm;
    right += one.x_mm > 10;
    upper += one.y_mm > 10;
  }
  const double wide = 5 * std::sqrt(times * 2.0 / 9);
  EXPECT_NEAR(right, times / 3.0, wide);
  EXPECT_NEAR(upper, times / 3.0, wide);
}

}  // namespace
}  // namespace jambline::trade
