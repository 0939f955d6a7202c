#include "screens/typed_times.h"

#include <gtest/gtest.h>

namespace jambline::screens {
namespace {

const QString eastern = QStringLiteral("America/New_York");

// 2026-03-09 is day 20521 since 1970-01-01: date -ud 2026-03-09 +%s gives 1773014400, over 86400.
TEST(TypedTimes, DaysAreReadMonthFirstOrYearFirstAndNotGuessed) {
  EXPECT_EQ(typed_day("2026-03-09"), 20521);
  EXPECT_EQ(typed_day(" 3/9/2026 "), 20521);
  EXPECT_EQ(typed_day("2/29/2024"), 19782);
  for (const char* none : {"", "9.3.2026", "3/9/26", "13/1/2026", "2/29/2026", "2026-00-10",
                           "tomorrow", "1/1/1969", "1/1/9999"})
    EXPECT_FALSE(typed_day(none)) << none;
}

TEST(TypedTimes, WhatIsWrittenCanBeTyped) {
  for (const int day : {0, 19782, 20521, 40000}) EXPECT_EQ(typed_day(day_text(day)), day);
  EXPECT_EQ(date_of_day(20521), "Mar 9, 2026");
}

TEST(TypedTimes, TimesOfDay) {
  EXPECT_EQ(typed_minute("7:10"), 430);
  EXPECT_EQ(typed_minute("07.10"), 430);
  EXPECT_EQ(typed_minute("0710"), 430);
  EXPECT_EQ(typed_minute("23:59"), 1439);
  for (const char* none : {"", "24:00", "7:60", "7", "7:1", "7:10 pm", "-7:10"})
    EXPECT_FALSE(typed_minute(none)) << none;
}

TEST(TypedTimes, HowFarADayIsAway) {
  EXPECT_EQ(days_apart_words(100, 100), "today");
  EXPECT_EQ(days_apart_words(101, 100), "in 1 day");
  EXPECT_EQ(days_apart_words(112, 100), "in 12 days");
  EXPECT_EQ(days_apart_words(100, 190), "2 months ago");
}

// The clocks of New York go forward at 2:00 on 2026-03-08: 15 U.S.C. 260a.
TEST(TypedTimes, ADayAndATimeAreAMomentOfTheShop) {
  const auto before = wall_of(20520, 60, eastern);
  const auto after = wall_of(20520, 240, eastern);
  ASSERT_TRUE(before && after);
  EXPECT_EQ(*after - *before, 2 * 3'600'000) << "three hours by the clock are two";
  EXPECT_EQ(today_of(*before, eastern), 20520);
  EXPECT_EQ(today_of(*before - 61 * 60'000, eastern), 20519);
}

}  // namespace
}  // namespace jambline::screens
