#include "screens/units.h"

#include <gtest/gtest.h>

#include "screens/rate_units.h"

// 1 in = 25.4 mm and 1 ft = 304.8 mm exactly: NIST Special Publication 811, appendix B.
namespace jambline::screens {
namespace {

const QString new_york = QStringLiteral("America/New_York");
constexpr std::int64_t minute_ms = 60'000;
constexpr std::int64_t hour_ms = 60 * minute_ms;
// 2026-09-10 21:40 UTC is 17:40 in New York (EDT, UTC-4): a Thursday.
constexpr std::int64_t evening_ms = 1789076400000;

TEST(Units, LengthIsWholeMillimetersOrInches) {
  EXPECT_EQ(length_words(304.8, Units::Us), QStringLiteral("12 in"));
  EXPECT_EQ(length_words(25.4, Units::Us), QStringLiteral("1.0 in"));
  EXPECT_EQ(length_words(299.6, Units::Metric), QStringLiteral("300 mm"));
}

TEST(Units, AreaIsTenthsOfSquareMetersOrWholeSquareFeet) {
  EXPECT_EQ(area_words(1.04e6, Units::Metric), QStringLiteral("1.0 m\u00b2"));
  EXPECT_EQ(area_words(304.8 * 304.8 * 11, Units::Us), QStringLiteral("11 ft\u00b2"));
}

TEST(Units, HoursRoundHalfUpToTenths) {
  EXPECT_EQ(hours_words(3 * minute_ms - 1), QStringLiteral("0.0 h"));
  EXPECT_EQ(hours_words(3 * minute_ms), QStringLiteral("0.1 h"));
  EXPECT_EQ(hours_words(7 * hour_ms + 24 * minute_ms), QStringLiteral("7.4 h"));
}

TEST(Units, DurationsUnderAnHourHaveNoHours) {
  EXPECT_EQ(duration_words(14 * minute_ms), QStringLiteral("14 min"));
  EXPECT_EQ(duration_words(130 * minute_ms), QStringLiteral("2 h 10 min"));
  EXPECT_EQ(duration_words(2 * hour_ms), QStringLiteral("2 h"));
}

TEST(Units, ARunningClockHasNoLeadingZeroOnHours) {
  EXPECT_EQ(running_words(401'000), QStringLiteral("0:06:41"));
  EXPECT_EQ(running_words(26 * hour_ms), QStringLiteral("26:00:00"));
  EXPECT_EQ(running_words(-5), QStringLiteral("0:00:00"));
}

TEST(Units, TodayHasNoDateAWeekHasItsDayLaterAMonth) {
  EXPECT_EQ(time_words(evening_ms, evening_ms, new_york), QStringLiteral("17:40"));
  EXPECT_EQ(time_words(evening_ms - 24 * hour_ms, evening_ms, new_york),
            QStringLiteral("Wed 17:40"));
  EXPECT_EQ(time_words(evening_ms + 6 * 24 * hour_ms, evening_ms, new_york),
            QStringLiteral("Wed 17:40"));
  EXPECT_EQ(time_words(evening_ms - 7 * 24 * hour_ms, evening_ms, new_york),
            QStringLiteral("Sep 3"));
}

TEST(Units, TheDayIsThatOfTheShopNotOfTheMachine) {
  const std::int64_t after_midnight_utc = evening_ms + 3 * hour_ms;  // 00:40 UTC, 20:40 there
  EXPECT_EQ(day_words(after_midnight_utc, new_york), QStringLiteral("Thu Sep 10"));
  EXPECT_EQ(clock_words(after_midnight_utc, new_york), QStringLiteral("20:40"));
}

TEST(Units, CommaPointAndTrueMinusAreRead) {
  EXPECT_EQ(typed_number(QStringLiteral("1.4")), 1.4);
  EXPECT_EQ(typed_number(QStringLiteral(" 1,4 ")), 1.4);
  EXPECT_EQ(typed_number(QStringLiteral("\u22123")), -3.0);
  EXPECT_FALSE(typed_number(QStringLiteral("1.4.2")));
  EXPECT_FALSE(typed_number(QStringLiteral("nan")));
  EXPECT_FALSE(typed_number(QString()));
}

TEST(Units, ARateIsPerSquareMeterOrPerSquareFoot) {
  EXPECT_EQ(rate_words(2.14, Units::Metric), QStringLiteral("2.1 per m\u00b2"));
  EXPECT_EQ(rate_words(2.14, Units::Us), QStringLiteral("0.20 per ft\u00b2"));
  EXPECT_DOUBLE_EQ(per_area(1e6 / (304.8 * 304.8), Units::Us), 1);
}

TEST(Units, ADateIsThatOfTheShopAndSaysAnotherYear) {
  const std::int64_t after_midnight_utc = evening_ms + 3 * hour_ms;
  EXPECT_EQ(date_words(after_midnight_utc, evening_ms, new_york), QStringLiteral("Sep 10"));
  EXPECT_EQ(date_words(evening_ms - 300 * 24 * hour_ms, evening_ms, new_york),
            QStringLiteral("Nov 14, 2025"));
  // 2026-09-10 is day 20706 (`date -ud 2026-09-10 +%s` / 86400); 17:40 there.
  EXPECT_NEAR(local_days(evening_ms, new_york), 20706 + (17 + 40.0 / 60) / 24, 1e-9);
}

}  // namespace
}  // namespace jambline::screens
