// Dates of clock changes: the IANA time zone database.
#include "base/zones.h"

#include <gtest/gtest.h>

namespace jambline {
namespace {

constexpr std::int64_t hour = 3'600'000;

TEST(Zones, OffsetsFollowTheClockChange) {
  EXPECT_EQ(*offset_s_at("America/New_York", 1'710'053'999'000),
            -5 * 3600);  // 2024-03-10 06:59:59Z
  EXPECT_EQ(*offset_s_at("America/New_York", 1'710'054'000'000), -4 * 3600);
  EXPECT_EQ(*offset_s_at("America/New_York", 1'730'613'599'999),
            -4 * 3600);  // 2024-11-03 05:59:59Z
  EXPECT_EQ(*offset_s_at("America/New_York", 1'730'613'600'000), -5 * 3600);
  EXPECT_EQ(*offset_s_at("Asia/Kathmandu", 1'710'054'000'000), 5 * 3600 + 45 * 60);
  EXPECT_EQ(*offset_s_at("UTC", 0), 0);
}

TEST(Zones, DaysHaveTwentyThreeToTwentyFiveHours) {
  const auto length = [](const char* zone, LocalDate date) {
    return local_day(zone, date)->length_ms();
  };
  EXPECT_EQ(length("America/New_York", {2024, 3, 10}), 23 * hour);
  EXPECT_EQ(length("America/New_York", {2024, 3, 11}), 24 * hour);
  EXPECT_EQ(length("America/New_York", {2024, 11, 3}), 25 * hour);
  EXPECT_EQ(length("America/Phoenix", {2024, 3, 10}), 24 * hour);
  EXPECT_EQ(length("Australia/Lord_Howe", {2024, 4, 7}), 24 * hour + hour / 2);
  EXPECT_EQ(length("Pacific/Apia", {2011, 12, 30}), 0);  // never was
}

TEST(Zones, ADayWhoseMidnightIsLeftOutBeginsWithItsFirstMoment) {
  // Sao Paulo put its clocks from 00:00 to 01:00 on 2018-11-04.
  const auto day = local_day("America/Sao_Paulo", {2018, 11, 4});
  ASSERT_TRUE(day);
  EXPECT_EQ(day->length_ms(), 23 * hour);
  EXPECT_EQ(day->start_ms, 1'541'300'400'000);  // 2018-11-04 03:00Z
}

TEST(Zones, ADayWhoseMidnightComesTwiceBeginsWithTheFirst) {
  // Havana put its clocks from 01:00 back to 00:00 on 2024-11-03.
  const auto day = local_day("America/Havana", {2024, 11, 3});
  ASSERT_TRUE(day);
  EXPECT_EQ(day->length_ms(), 25 * hour);
}

TEST(Zones, DaysOfAYearJoinWithoutAGapAndKnowTheirDate) {
  for (const char* zone :
       {"America/New_York", "Europe/Berlin", "America/Havana", "Africa/Casablanca"}) {
    static constexpr int lengths[] = {31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    std::int64_t end_ms = local_day(zone, {2024, 1, 1})->start_ms;
    for (int month = 1; month <= 12; ++month)
      for (int day = 1; day <= lengths[month - 1]; ++day) {
        const LocalDate date{2024, month, day};
        const auto span = local_day(zone, date);
        ASSERT_TRUE(span);
        EXPECT_EQ(span->start_ms, end_ms) << zone << month << '-' << day;
        EXPECT_EQ(*local_date_at(zone, span->start_ms), date);
        EXPECT_EQ(*local_date_at(zone, span->end_ms - 1), date);
        end_ms = span->end_ms;
      }
  }
}

TEST(Zones, TheHourThatComesTwiceIsTheFirstAndTheOneLeftOutIsTheChange) {
  EXPECT_EQ(*utc_of("America/New_York", {2024, 11, 3}, 90),
            1'730'611'800'000);  // 05:30Z, summer time
  EXPECT_EQ(*utc_of("America/New_York", {2024, 3, 10}, 150), 1'710'054'000'000);  // 07:00Z
  EXPECT_EQ(*utc_of("America/New_York", {2024, 6, 10}, 0), 1'717'992'000'000);    // 04:00Z
}

TEST(Zones, AnUnknownZoneIsUnknownAndALinkIsFollowed) {
  for (const char* zone : {"America/Nowhere", "", "../etc/passwd", "america/new_york", "EST "}) {
    const Status known = zone_known(zone);
    ASSERT_FALSE(known) << zone;
    EXPECT_EQ(known.error().code, Code::Unknown) << zone;
    EXPECT_EQ(local_day(zone, {2024, 1, 1}).error().code, Code::Unknown) << zone;
    EXPECT_EQ(offset_s_at(zone, 0).error().code, Code::Unknown) << zone;
  }
  EXPECT_TRUE(zone_known("US/Eastern"));
  EXPECT_EQ(*local_day("US/Eastern", {2024, 3, 10}), *local_day("America/New_York", {2024, 3, 10}));
}

TEST(Zones, DatesAndTimesThatNoCalendarHasAreOutOfRange) {
  for (const LocalDate date : {LocalDate{2023, 2, 29},
                               {2024, 13, 1},
                               {2024, 0, 1},
                               {2024, 1, 0},
                               {2024, -1, 5},
                               {2024, 257, 1},
                               {2024, 1, 257},
                               {0, 1, 1},
                               {40'000, 1, 1}})
    EXPECT_EQ(local_day("UTC", date).error().code, Code::OutOfRange)
        << date.year << '-' << date.month << '-' << date.day;
  EXPECT_EQ(utc_of("UTC", {2024, 1, 1}, 1440).error().arg("field"), "minute_of_day");
  EXPECT_EQ(utc_of("UTC", {2024, 1, 1}, -1).error().code, Code::OutOfRange);
  EXPECT_EQ(offset_s_at("UTC", INT64_MAX).error().code, Code::OutOfRange);
  EXPECT_EQ(local_date_at("UTC", INT64_MIN).error().code, Code::OutOfRange);
  EXPECT_TRUE(local_day("UTC", {2024, 2, 29}));
}

}  // namespace
}  // namespace jambline
