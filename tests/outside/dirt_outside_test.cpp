// What the dirt pattern is made of: sums of shares, draws of two kinds, circles on a panel.
#include <gtest/gtest.h>

#include "tests/outside/table.h"
#include "trade/probability.h"
#include "trade/rows.h"

namespace jambline::trade {
namespace {

using outside::number;
using outside::numbers;
using outside::same;
using outside::same_chance;
using outside::table;
using outside::whole;

Polygon outline_of(const std::string& cell) {
  Polygon out;
  const auto flat = numbers(cell);
  for (std::size_t i = 0; i + 1 < flat.size(); i += 2)
    out.corners.push_back({flat[i], flat[i + 1]});
  return out;
}

TEST(ProbabilityOutside, SumsOfSharesAsRHasThem) {
  for (const auto& row : table("r_share_sums.csv")) {
    std::vector<BinomialPart> parts;
    const auto trials = numbers(row.at("trials"));
    const auto shares = numbers(row.at("shares"));
    for (std::size_t i = 0; i < trials.size(); ++i)
      parts.push_back({static_cast<std::int64_t>(trials[i]), shares[i]});
    EXPECT_TRUE(
        same_chance(binomials_at_least(whole(row, "count"), parts), number(row, "at_least")))
        << row.at("trials");
  }
}

TEST(ProbabilityOutside, DrawsOfTwoKindsAsRHasThem) {
  for (const auto& row : table("r_draws_of_two_kinds.csv"))
    EXPECT_TRUE(
        same_chance(drawn_at_least(whole(row, "count"), whole(row, "drawn"), whole(row, "first"),
                                   whole(row, "second"), number(row, "odds")),
                    number(row, "at_least")))
        << row.at("count") << " of " << row.at("drawn");
}

// Rows stand for their middle lines: with rows of half a millimetre a part in 1,000 is left.
TEST(RowsOutside, ThePartOfACircleInsideAnOutline) {
  for (const auto& row : table("scipy_circle_areas.csv")) {
    const Polygon outline = outline_of(row.at("outline"));
    Rows rows(bounds(outline.corners), 0.5);
    rows.add_inside(outline);
    rows.join();
    const double radius = number(row, "radius");
    double area = 0;
    rows.circles_mm2({number(row, "x"), number(row, "y")}, {&radius, 1}, {&area, 1});
    EXPECT_NEAR(area, number(row, "area"), 1e-3 * number(row, "area")) << radius;
  }
}

}  // namespace
}  // namespace jambline::trade
