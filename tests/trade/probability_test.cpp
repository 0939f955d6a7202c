#include "trade/probability.h"

#include <cmath>
#include <gtest/gtest.h>

namespace jambline::trade {
namespace {

TEST(Probability, ThreeCoins) {
  EXPECT_NEAR(binomial_at_least(2, 3, 0.5), 0.5, 1e-15);
  EXPECT_NEAR(binomial_at_most(0, 3, 0.5), 0.125, 1e-15);
  EXPECT_NEAR(binomial_two_sided(3, 3, 0.5), 0.25, 1e-15);
  EXPECT_NEAR(binomial_two_sided(2, 3, 0.5), 1, 1e-15);
  EXPECT_EQ(binomial_at_least(0, 3, 0.5), 1);
  EXPECT_EQ(binomial_at_most(3, 3, 0.5), 1);
}

TEST(Probability, NothingTriedSaysNothing) {
  EXPECT_EQ(binomial_two_sided(0, 0, 0.3), 1);
  EXPECT_EQ(binomial_interval(0, 0, 0.95), (Interval{0, 1}));
}

TEST(Probability, NoneOrAllOfTenHaveTheirOwnIntervals) {
  // (1 - high)^10 = 0.025
  const auto none = binomial_interval(0, 10, 0.95);
  EXPECT_EQ(none.low, 0);
  EXPECT_NEAR(none.high, 1 - std::pow(0.025, 0.1), 1e-12);
  const auto all = binomial_interval(10, 10, 0.95);
  EXPECT_NEAR(all.low, std::pow(0.025, 0.1), 1e-12);
  EXPECT_EQ(all.high, 1);
}

TEST(Probability, CountsOfRareThings) {
  EXPECT_NEAR(poisson_at_most(0, 2), std::exp(-2.0), 1e-15);
  EXPECT_NEAR(poisson_at_least(1, 2), 1 - std::exp(-2.0), 1e-15);
  EXPECT_NEAR(poisson_at_most(1, 2), 3 * std::exp(-2.0), 1e-15);
  EXPECT_EQ(poisson_at_least(0, 0), 1);
  EXPECT_EQ(poisson_at_least(1, 0), 0);
  // exp(-high) = 0.025
  const auto none = poisson_interval(0, 0.95);
  EXPECT_EQ(none.low, 0);
  EXPECT_NEAR(none.high, -std::log(0.025), 1e-12);
}

TEST(Probability, ASpreadOfNothingIsAStep) {
  EXPECT_EQ(normal_below(1, 2, 0), 0);
  EXPECT_EQ(normal_below(2, 2, 0), 1);
  EXPECT_NEAR(normal_below(2, 2, 5), 0.5, 1e-15);
  EXPECT_NEAR(normal_quantile(normal_below(1.25)), 1.25, 1e-12);
}

TEST(Probability, ARatioTurnedRoundIsTheReciprocal) {
  const auto there = rate_ratio(12, 5, 7, 8, 0.95);
  const auto back = rate_ratio(7, 8, 12, 5, 0.95);
  EXPECT_NEAR(there.ratio, 12.0 / 5 / (7.0 / 8), 1e-12);
  EXPECT_NEAR(there.ratio * back.ratio, 1, 1e-12);
  EXPECT_NEAR(there.interval.low * back.interval.high, 1, 1e-9);
  EXPECT_NEAR(there.interval.high * back.interval.low, 1, 1e-9);
  EXPECT_NEAR(there.chance, back.chance, 1e-12);
}

TEST(Probability, ARatioToNothingHasNoEnd) {
  const auto ratio = rate_ratio(4, 1, 0, 1, 0.95);
  EXPECT_TRUE(ratio.unbounded);
  // low / (1 + low) is the least share of 4 of 4: (0.025)^(1/4)
  const double share = std::pow(0.025, 0.25);
  EXPECT_NEAR(ratio.interval.low, share / (1 - share), 1e-12);
  EXPECT_NEAR(ratio.chance, 2 * 0.0625, 1e-12);
}

TEST(Probability, HolmByHand) {
  const auto found = holm({0.01, 0.04, 0.03});
  EXPECT_NEAR(found[0], 0.03, 1e-15);
  EXPECT_NEAR(found[1], 0.06, 1e-15);  // not under the 0.06 of the smaller one
  EXPECT_NEAR(found[2], 0.06, 1e-15);
  EXPECT_EQ(holm({0.7, 0.9}), (std::vector{1.0, 1.0}));
  EXPECT_TRUE(holm({}).empty());
}

}  // namespace
}  // namespace jambline::trade
