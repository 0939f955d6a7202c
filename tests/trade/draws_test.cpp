#include "trade/draws.h"

#include <cmath>
#include <gtest/gtest.h>
#include <map>

namespace jambline::trade {
namespace {

template <class T, class Draw>
std::vector<T> drawn(std::size_t count, Draw draw) {
  std::vector<T> out;
  for (std::size_t i = 0; i < count; ++i) out.push_back(static_cast<T>(draw()));
  return out;
}

// The first numbers of seed 42 as plain Python gives them: tests/outside/draws.csv.
TEST(Draws, IntegersAreTheSameOnEveryMachine) {
  Draws dice(42);
  EXPECT_EQ(drawn<int>(12, [&] { return dice.below(6); }),
            (std::vector{0, 2, 4, 0, 5, 2, 4, 0, 4, 1, 1, 0}));
  Draws cards(42);
  std::vector<int> items{0, 1, 2, 3, 4, 5, 6, 7, 8, 9};
  cards.shuffle(items);
  EXPECT_EQ(items, (std::vector{1, 7, 9, 0, 3, 8, 4, 2, 5, 6}));
  // Over 30 by rejection: the same integers wherever log and lgamma are right to the last bits.
  Draws counts(42);
  EXPECT_EQ(drawn<int>(8, [&] { return counts.poisson(120); }),
            (std::vector{129, 128, 137, 122, 112, 126, 132, 129}));
}

TEST(Draws, TheSameSeedTwiceIsTheSameAndAnotherSeedIsNot) {
  Draws a(7), b(7), c(8);
  for (int i = 0; i < 100; ++i) EXPECT_EQ(a.bits(), b.bits());
  EXPECT_NE(a.bits(), c.bits());
}

TEST(Draws, EveryFaceOfADieComesUpAsOften) {
  Draws draws(3);
  std::map<std::size_t, int> faces;
  const int times = 60000;
  for (int i = 0; i < times; ++i) ++faces[draws.below(6)];
  ASSERT_EQ(faces.size(), 6U);
  double chi_square = 0;
  for (const auto& [face, count] : faces)
    chi_square += std::pow(count - times / 6, 2) / (times / 6);
  EXPECT_LT(chi_square, 25.7);  // 1 in 10,000 for five degrees
  EXPECT_EQ(draws.below(1), 0U);
}

TEST(Draws, MeansAndSpreadsAreThoseAskedFor) {
  const int times = 40000;
  const auto look = [&](auto draw, double mean, double sd) {
    Draws draws(11);
    double sum = 0, squares = 0;
    for (int i = 0; i < times; ++i) {
      const double one = static_cast<double>(draw(draws));
      sum += one;
      squares += (one - mean) * (one - mean);
    }
    EXPECT_NEAR(sum / times, mean, 5 * sd / std::sqrt(times));
    EXPECT_NEAR(std::sqrt(squares / times), sd, 0.04 * sd);
  };
  look([](Draws& d) { return d.unit(); }, 0.5, std::sqrt(1.0 / 12));
  look([](Draws& d) { return d.between(-3, 5); }, 1, 8 * std::sqrt(1.0 / 12));
  look([](Draws& d) { return d.normal(12, 2.5); }, 12, 2.5);
  look([](Draws& d) { return d.exponential(7); }, 7, 7);
  // (2 + 5 + 11) / 3 and (4 + 25 + 121 - 10 - 22 - 55) / 18
  look([](Draws& d) { return d.triangular(2, 5, 11); }, 6, std::sqrt(63.0 / 18));
  for (const double mean : {0.3, 4.0, 29.9, 30.0, 240.0})
    look([&](Draws& d) { return d.poisson(mean); }, mean, std::sqrt(mean));
}

TEST(Draws, EndsAreKept) {
  Draws draws(5);
  for (int i = 0; i < 20000; ++i) {
    const double unit = draws.unit();
    EXPECT_GE(unit, 0);
    EXPECT_LT(unit, 1);
    const double time = draws.triangular(10, 10, 30);
    EXPECT_GE(time, 10);
    EXPECT_LE(time, 30);
  }
  EXPECT_EQ(draws.triangular(4, 4, 4), 4);
  EXPECT_EQ(draws.poisson(0), 0U);
}

TEST(Draws, ANormalPairCostsTwoNumbers) {
  Draws pairs(9), plain(9);
  pairs.normal(0, 1);
  pairs.normal(0, 1);
  plain.unit();
  plain.unit();
  EXPECT_EQ(pairs.bits(), plain.bits());
}

}  // namespace
}  // namespace jambline::trade
