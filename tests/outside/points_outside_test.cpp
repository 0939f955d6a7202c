// Points: spacing, groups, the tightest circle and areas of circles against spatstat, dbscan,
// scipy.
#include <gtest/gtest.h>

#include "tests/outside/table.h"
#include "trade/correction_plan.h"
#include "trade/dirt_scan.h"
#include "trade/points.h"

namespace jambline::trade {
namespace {

using outside::number;
using outside::numbers;
using outside::same;
using outside::table;

std::vector<Point_mm> points_of(const std::string& name, double scale = 1, double up = 0) {
  std::vector<Point_mm> out;
  for (const auto& row : table("points_" + name + ".csv"))
    out.push_back({number(row, "x") * scale, number(row, "y") * scale + up});
  return out;
}

// The same on a panel of one square meter; one of the sets lies under its axis.
std::vector<Point_mm> marks_of(const std::string& name) {
  return points_of(name, 1000, name == "redwood" ? 1000 : 0);
}
Polygon square_meter() {
  return {{{0, 0}, {1000, 0}, {1000, 1000}, {0, 1000}}};
}

TEST(PointsOutside, TheNearestNeighbourOfEveryPoint) {
  std::map<std::string, std::vector<double>> found;
  for (const char* name : {"cells", "redwood", "japanesepines"})
    found[name] = nearest_distances(points_of(name));
  std::size_t rows = 0;
  for (const auto& row : table("points_nearest.csv")) {
    const auto place = static_cast<std::size_t>(number(row, "place")) - 1;
    EXPECT_TRUE(same(found[row.at("points")].at(place), number(row, "distance")));
    ++rows;
  }
  EXPECT_EQ(rows, 42U + 62U + 65U);
}

TEST(PointsOutside, SpacingOfClarkEvansAndDonnelly) {
  for (const auto& row : table("points_spacing.csv")) {
    const std::string& name = row.at("points");
    const auto points =
        name == "four"
            ? std::vector<Point_mm>{{0.25, 0.25}, {0.75, 0.25}, {0.25, 0.75}, {0.75, 0.75}}
            : points_of(name);
    const double area = number(row, "area");
    const auto nearest = nearest_distances(points);
    EXPECT_EQ(points.size(), number(row, "count"));
    EXPECT_TRUE(same(mean_nearest(points), number(row, "mean"))) << name;
    EXPECT_TRUE(same(*std::min_element(nearest.begin(), nearest.end()), number(row, "least")));
    EXPECT_TRUE(same(*std::max_element(nearest.begin(), nearest.end()), number(row, "most")));
    EXPECT_TRUE(same(clark_evans_index(points, area), number(row, "clark_evans"))) << name;
    EXPECT_TRUE(
        same(donnelly_index(points, area, number(row, "perimeter")), number(row, "donnelly")))
        << name;
  }
}

TEST(PointsOutside, GroupsAsDbscanHasThem) {
  for (const auto& row : table("points_groups.csv")) {
    const auto groups = dbscan_groups(points_of(row.at("points")), number(row, "eps"),
                                      static_cast<int>(number(row, "least")));
    std::map<int, int> sizes;
    for (const int group : groups) ++sizes[group];
    const std::string name = row.at("points") + " " + row.at("eps") + " " + row.at("least");
    EXPECT_EQ(sizes[no_group], number(row, "alone")) << name;
    sizes.erase(no_group);
    EXPECT_EQ(sizes.size(), number(row, "groups")) << name;
    std::vector<double> found;
    for (const auto& [group, size] : sizes) found.push_back(size);
    std::sort(found.rbegin(), found.rend());
    EXPECT_EQ(found, numbers(row.at("sizes"))) << name;
  }
}

// Source: scikit-learn 0.21 documentation of DBSCAN; labels 0 0 0 1 1 -1, a core point counts
// itself
TEST(PointsOutside, GroupsOfTheDocumentation) {
  const std::vector<Point_mm> points{{1, 2}, {2, 2}, {2, 3}, {8, 7}, {8, 8}, {25, 80}};
  EXPECT_EQ(dbscan_groups(points, 3, 2), (std::vector<int>{0, 0, 0, 1, 1, -1}));
}

// Drawn patterns on either side: the two chances differ by chance alone, within 5 standard errors.
double wide_of(double chance, double patterns_a, double patterns_b) {
  const double middle = std::clamp(chance, 0.002, 0.998);
  return 5 * std::sqrt(middle * (1 - middle) * (1 / patterns_a + 1 / patterns_b));
}

TEST(ScanOutside, SpacingIsAsRareAsInPatternsDrawnByR) {
  for (const auto& row : table("points_chances.csv")) {
    Draws draws(5);
    const auto scan = scan_dirt(square_meter(), marks_of(row.at("points")), 1999, draws);
    EXPECT_NEAR(scan.spacing_chance, number(row, "as_tight"),
                wide_of(number(row, "as_tight"), 1999, number(row, "patterns")))
        << row.at("points");
  }
}

// The program looks the share of a circle up on nodes 25 mm apart, drawn patterns alike. That may
// change places among circles that are nearly as tight, none of which points to anything; where one
// stands out it is the same circle, and as rare.
TEST(ScanOutside, TheTightestCircleIsTheSameAndAsRare) {
  for (const auto& row : table("scipy_scans.csv")) {
    Draws draws(6);
    const auto scan = scan_dirt(square_meter(), marks_of(row.at("points")), 1999, draws);
    const std::string& name = row.at("points");
    const double chance = number(row, "chance");
    EXPECT_EQ(scan.cluster_chance < 0.05, chance < 0.05) << name;
    if (chance >= 0.05) continue;
    EXPECT_NEAR(scan.cluster_center.x_mm, number(row, "x"), 1e-9) << name;
    EXPECT_NEAR(scan.cluster_center.y_mm, number(row, "y"), 1e-9) << name;
    EXPECT_EQ(scan.cluster_radius_mm, number(row, "radius")) << name;
    EXPECT_EQ(scan.cluster_marks, number(row, "marks")) << name;
    EXPECT_NEAR(scan.cluster_expected, number(row, "expected"), 0.1 * number(row, "expected"));
    EXPECT_NEAR(scan.cluster_chance, chance, wide_of(chance, 1999, number(row, "patterns")));
  }
}

TEST(WalkOutside, TheShortestWayPastAllPlaces) {
  for (const auto& row : table("walks.csv")) {
    std::vector<Point_mm> places;
    const auto flat = numbers(row.at("places"));
    for (std::size_t i = 0; i + 1 < flat.size(); i += 2) places.push_back({flat[i], flat[i + 1]});
    const auto order = shortest_walk(places);
    auto all = order;
    std::sort(all.begin(), all.end());
    ASSERT_EQ(all.size(), places.size());
    double length = 0;
    for (std::size_t i = 0; i < all.size(); ++i) {
      EXPECT_EQ(all[i], i);
      if (i > 0) length += distance_mm(places[order[i - 1]], places[order[i]]);
    }
    EXPECT_TRUE(same(length, number(row, "length"))) << places.size();
  }
}

TEST(CirclesOutside, TheAreaThatSeveralCover) {
  for (const auto& row : table("scipy_circle_unions.csv")) {
    std::vector<Circle_mm> circles;
    const auto flat = numbers(row.at("circles"));
    for (std::size_t i = 0; i + 2 < flat.size(); i += 3)
      circles.push_back({{flat[i], flat[i + 1]}, flat[i + 2]});
    EXPECT_TRUE(same(circles_union_area_mm2(circles), number(row, "area"), 1e-3));
  }
}

// Source: elementary geometry; two circles r apart are 2 pi r^2 less a lens of r^2 (2 pi / 3 -
// sqrt(3) / 2)
TEST(CirclesOutside, TwoCirclesLessTheirLens) {
  const double r = 75;
  const double pi = 3.14159265358979323846;
  EXPECT_TRUE(same(circles_union_area_mm2({{{0, 0}, r}, {{r, 0}, r}}),
                   2 * pi * r * r - r * r * (2 * pi / 3 - std::sqrt(3.0) / 2)));
}

}  // namespace
}  // namespace jambline::trade
