#include "sync/rate.h"

#include <gtest/gtest.h>

namespace jambline::sync {
namespace {

TEST(Buckets, ANameHasWhatItSavedUpAndThenSoManyASecond) {
  Buckets<int> buckets(2, 5);
  int taken = 0;
  for (int i = 0; i < 20; ++i) taken += buckets.take(1, 1'000'000);
  EXPECT_EQ(taken, 5);
  taken = 0;
  for (int i = 0; i < 20; ++i) taken += buckets.take(1, 1'001'000);
  EXPECT_EQ(taken, 2);
  EXPECT_TRUE(buckets.take(2, 1'001'000));
}

TEST(Buckets, ACrowdFillsThemAndWhoHasOneGoesOnUntilOthersAreForgotten) {
  Buckets<int> buckets(1, 100);
  constexpr std::int64_t now_ms = 1'000'000;
  int name = 0;
  while (buckets.take(name, now_ms)) ASSERT_LT(++name, 100'000);
  EXPECT_GT(name, 4096);
  EXPECT_TRUE(buckets.take(0, now_ms));
  EXPECT_FALSE(buckets.take(name, now_ms + 900)) << "one that is new";
  // By then each of them is full again.
  EXPECT_TRUE(buckets.take(name, now_ms + 3000));
}

TEST(LookThrough, IsDueOnceASecondHoweverManyAsk) {
  LookThrough look_through;
  int due = 0;
  for (std::int64_t ms = 5'000; ms < 8'000; ++ms) due += look_through.due(ms);
  EXPECT_EQ(due, 3);
}

}  // namespace
}  // namespace jambline::sync
