#include "base/random.h"

#include <gtest/gtest.h>
#include <map>
#include <set>

namespace jambline {
namespace {

TEST(Random, ASeedRepeatsItselfAndAnotherSeedDoesNot) {
  SeededRandom one(7);
  SeededRandom two(7);
  SeededRandom other(8);
  const auto first = one.make<Hash>();
  EXPECT_EQ(first, two.make<Hash>());
  EXPECT_NE(first, other.make<Hash>());
  EXPECT_NE(one.make<Hash>(), first);
}

// The standard fixes mt19937_64: the 10000th number from the default seed (C++ [rand.predef]).
TEST(Random, TheEngineIsTheStandardsOwn) {
  SeededRandom random(5489U);
  random.engine().discard(9999);
  EXPECT_EQ(random.engine()(), 9981545732273789042ULL);
}

TEST(Random, AnyNumberOfBytesIsFilledToItsEnd) {
  SeededRandom random(1);
  for (const std::size_t size : {0U, 1U, 7U, 8U, 9U, 33U}) {
    std::set<std::uint8_t> last;
    std::vector<std::uint8_t> bytes(size + 1, 0xAA);
    for (int i = 0; i < 200; ++i) {
      random.fill(std::span(bytes).first(size));
      EXPECT_EQ(bytes.back(), 0xAA);
      if (size) last.insert(bytes[size - 1]);
    }
    if (size) {
      EXPECT_GT(last.size(), 20U) << size;
    }
  }
}

TEST(Random, BelowStaysBelowAndTakesEveryValueAlike) {
  SeededRandom random(3);
  std::map<std::uint64_t, int> seen;
  for (int i = 0; i < 60'000; ++i) ++seen[random.below(6)];
  EXPECT_EQ(seen.size(), 6U);
  for (const auto& [value, times] : seen) {
    EXPECT_LT(value, 6U);
    EXPECT_NEAR(times, 10'000, 500);  // over five standard deviations
  }
  EXPECT_EQ(random.below(1), 0U);
}

TEST(Random, UnitIsInItsHalfOpenRange) {
  SeededRandom random(4);
  double sum = 0;
  for (int i = 0; i < 10'000; ++i) {
    const double value = random.unit();
    ASSERT_GE(value, 0);
    ASSERT_LT(value, 1);
    sum += value;
  }
  EXPECT_NEAR(sum / 10'000, 0.5, 0.015);
}

TEST(Random, TheKernelsGeneratorGivesEachTimeAnother) {
  SystemRandom random;
  std::set<Hash> seen;
  for (int i = 0; i < 100; ++i) seen.insert(random.make<Hash>());
  EXPECT_EQ(seen.size(), 100U);
}

}  // namespace
}  // namespace jambline
