// Days since 1970 below were worked out with GNU date: date -u -d DAY +%s, divided by 86400.
#include "job/retention.h"

#include <gtest/gtest.h>

namespace jambline::job {
namespace {

TEST(Retention, EveryClassHasItsRowInOrder) {
  ASSERT_EQ(usual_retentions().size(), enum_words<RecordClass>.size());
  for (std::size_t i = 0; i < usual_retentions().size(); ++i)
    EXPECT_EQ(usual_retentions()[i].record, static_cast<RecordClass>(i));
}

TEST(Retention, YearsAreThoseOfTheCalendar) {
  EXPECT_EQ(day_years_later(20'520, 1), 20'885);    // 2026-03-08, 2027-03-08
  EXPECT_EQ(day_years_later(20'520, 2), 21'251);    // 2028-03-08, over a February 29
  EXPECT_EQ(day_years_later(19'782, 1), 20'148);    // 2024-02-29, 2025-03-01
  EXPECT_EQ(day_years_later(19'782, 4), 21'243);    // 2028-02-29
  EXPECT_EQ(day_years_later(20'520, 30), 31'478);   // 2056-03-08
  EXPECT_EQ(day_years_later(47'176, 100), 83'700);  // 2099-03-01, 2199-03-01
}

TEST(Retention, TheShopsOwnYearsWinAndFewerAreSaid) {
  EXPECT_EQ(kept_years(RecordClass::TimeCards, {}), 2);
  EXPECT_EQ(kept_years(RecordClass::TimeCards, 6), 6);
  EXPECT_EQ(kept_years(RecordClass::TimeCards, 1), 1);
  EXPECT_EQ(kept_years(RecordClass::FitTests, {}), std::nullopt);
  EXPECT_EQ(kept_years(RecordClass::CarJobs, {}), std::nullopt);
  EXPECT_EQ(kept_years(RecordClass::CarJobs, 7), 7);
  EXPECT_TRUE(shorter_than_usual(RecordClass::TimeCards, 1));
  EXPECT_FALSE(shorter_than_usual(RecordClass::TimeCards, 2));
  EXPECT_FALSE(shorter_than_usual(RecordClass::TimeCards, {}));
  EXPECT_FALSE(shorter_than_usual(RecordClass::CarJobs, 1));
}

}  // namespace
}  // namespace jambline::job
