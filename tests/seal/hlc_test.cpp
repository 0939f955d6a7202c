#include "seal/hlc.h"

#include <gtest/gtest.h>

namespace jambline::seal {
namespace {

// Worked by hand from figure 5 of Kulkarni et al. 2014; the algorithm itself is from memory.
TEST(Clock, FollowsTheWorkedTrace) {
  struct Step {
    std::int64_t wall_ms;
    bool heard;
    Hlc remote, wanted;
  };
  const Step steps[] = {
      {10, false, {}, {10, 0}},      {10, false, {}, {10, 1}},     {11, false, {}, {11, 0}},
      {11, true, {20, 3}, {20, 4}},  {12, false, {}, {20, 5}},     {12, true, {20, 9}, {20, 10}},
      {12, true, {15, 7}, {20, 11}}, {25, true, {24, 4}, {25, 0}}, {25, true, {25, 0}, {25, 1}},
      {24, false, {}, {25, 2}},
  };
  Hlc now;
  for (const Step& step : steps) {
    now = step.heard ? hlc_receive(now, step.remote, step.wall_ms) : hlc_local(now, step.wall_ms);
    EXPECT_EQ(now.ms, step.wanted.ms);
    EXPECT_EQ(now.counter, step.wanted.counter);
  }
}

TEST(Clock, AFullCounterCarriesAndNeverGoesBack) {
  const Hlc full{1000, UINT16_MAX};
  EXPECT_EQ(hlc_local(full, 5), (Hlc{1001, 0}));
  const Hlc last{(1ULL << 48U) - 1, UINT16_MAX};
  EXPECT_EQ(hlc_local(last, 5), last);
  EXPECT_EQ(hlc_local({}, -7), (Hlc{0, 1}));
  EXPECT_EQ(hlc_local({}, INT64_MAX).ms, (1ULL << 48U) - 1);
}

TEST(Clock, PackedItOrdersAsItself) {
  EXPECT_LT((Hlc{5, UINT16_MAX}).packed(), (Hlc{6, 0}).packed());
  EXPECT_EQ(Hlc::unpack((Hlc{123456789, 77}).packed()), (Hlc{123456789, 77}));
}

TEST(Clock, FiveMinutesAheadIsBelievedAndMoreIsNot) {
  EXPECT_TRUE(hlc_believable({1000000 + 300000, 0}, 1000000));
  EXPECT_FALSE(hlc_believable({1000000 + 300001, 0}, 1000000));
}

}  // namespace
}  // namespace jambline::seal
