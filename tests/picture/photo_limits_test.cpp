// Thresholds of picture/photo_limits.h against pictures they were not chosen on.
#include <gtest/gtest.h>
#include <iostream>

#include "tests/picture/photo_figures.h"

namespace jambline::picture {
namespace {

static_assert(sources >= 60);

void held(int first) {
  PhotoFigures figures;
  judge_sources(first, 2, figures);
  ASSERT_EQ(figures.unread, "") << "the photographs come with the Debian 12 package "
                                   "lomiri-wallpapers-16.04, which has to be installed";
  std::cout << "false alarms " << figures.false_alarm_percent() << " % of " << figures.good
            << ", misses " << figures.miss_percent() << " % of " << figures.bad << ": "
            << figures.wrong << '\n';
  EXPECT_LE(figures.false_alarm_percent(), 5);
  EXPECT_LE(figures.miss_percent(), 5);
  for (const auto& [variant, misses] : figures.misses_by_variant)
    EXPECT_LE(100.0 * misses / figures.good, 10) << variant;
}

TEST(PhotoLimits, HoldOnTheHalfTheyWereChosenOn) {
  held(0);
}

TEST(PhotoLimits, HoldOnTheHalfTheyHadNotSeen) {
  held(1);
}

}  // namespace
}  // namespace jambline::picture
