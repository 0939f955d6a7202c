#include "trade/ready_by.h"

#include <gtest/gtest.h>

namespace jambline::trade {
namespace {

constexpr double day = 1440;

WorkItem work(const char* name, double minutes, std::vector<std::string> after = {}) {
  return {name, minutes, minutes, minutes, false, std::move(after)};
}
WorkItem wait(const char* name, double minutes, std::vector<std::string> after = {}) {
  return {name, minutes, minutes, minutes, true, std::move(after)};
}
// Eight to five, five days a week, from a Monday's midnight.
ReadyBy shop(std::vector<WorkItem> items, double now_min) {
  ReadyBy out;
  out.work = std::move(items);
  for (int i = 0; i < 14; ++i)
    if (i % 7 < 5) out.hours.push_back({i * day + 480, i * day + 1020});
  out.now_min = now_min;
  out.trials = 100;
  return out;
}

TEST(ReadyBy, WorkStopsOverNightAndGoesOnInTheMorning) {
  const auto result = ready_by(shop({work("prime", 600)}, 480));
  ASSERT_TRUE(result);
  EXPECT_DOUBLE_EQ(result->likely_min, day + 540);
  EXPECT_DOUBLE_EQ(result->length_min, 600);
}

TEST(ReadyBy, WorkThatEndsWithTheDayIsReadyThatDay) {
  EXPECT_DOUBLE_EQ(ready_by(shop({work("prime", 540)}, 480))->likely_min, 1020);
}

TEST(ReadyBy, BeforeOpeningItBeginsWithTheDay) {
  EXPECT_DOUBLE_EQ(ready_by(shop({work("prime", 30)}, 60))->likely_min, 510);
  EXPECT_DOUBLE_EQ(ready_by(shop({work("prime", 30)}, 1200))->likely_min, day + 510);
}

TEST(ReadyBy, TheWeekendIsNoWork) {
  // Friday four in the afternoon, two hours: an hour on Friday, one on Monday.
  EXPECT_DOUBLE_EQ(ready_by(shop({work("buff", 120)}, 4 * day + 960))->likely_min, 7 * day + 540);
}

TEST(ReadyBy, AWaitGoesOnByTheWallClock) {
  // Cured from five in the afternoon for ten hours: at three at night, taken up at eight.
  const auto night = ready_by(
      shop({work("clear", 60), wait("cure", 600, {"clear"}), work("buff", 60, {"cure"})}, 960));
  ASSERT_TRUE(night);
  EXPECT_DOUBLE_EQ(night->work[1].finish_min, 1020 + 600);
  EXPECT_DOUBLE_EQ(night->likely_min, day + 540);
  // A cure over the weekend costs no working hour.
  const auto weekend =
      ready_by(shop({wait("cure", 2 * day), work("buff", 60, {"cure"})}, 4 * day + 1020));
  EXPECT_DOUBLE_EQ(weekend->likely_min, 7 * day + 540);
}

TEST(ReadyBy, HoursThatEndTooSoonAreSaidSo) {
  const auto result = ready_by(shop({work("all", 11 * 540)}, 480));
  ASSERT_FALSE(result);
  EXPECT_EQ(result.error().code, Code::NotYet);
  EXPECT_EQ(result.error().subject, "hours");
}

TEST(ReadyBy, ACircleIsRefused) {
  const auto circle =
      ready_by(shop({work("a", 10), work("b", 10, {"a", "c"}), work("c", 10, {"b"})}, 480));
  ASSERT_FALSE(circle);
  EXPECT_EQ(circle.error().code, Code::Malformed);
  EXPECT_EQ(circle.error().subject, "work[1].after");
  const auto itself = ready_by(shop({work("a", 10, {"a"})}, 480));
  EXPECT_FALSE(itself);
  const auto nobody = ready_by(shop({work("a", 10, {"x"})}, 480));
  ASSERT_FALSE(nobody);
  EXPECT_EQ(nobody.error().code, Code::Unknown);
  EXPECT_FALSE(ready_by(shop({work("a", 10), work("a", 10)}, 480)));
}

TEST(ReadyBy, BothOfTwoEquallyLongWaysAreCritical) {
  const auto result = ready_by(
      shop({work("strip", 30), work("paint door", 50, {"strip"}), work("paint hood", 50, {"strip"}),
            work("glass", 20, {"strip"}), work("fit", 10, {"paint door", "paint hood", "glass"})},
           480));
  ASSERT_TRUE(result);
  EXPECT_DOUBLE_EQ(result->length_min, 90);
  for (const WorkTimes& one : result->work)
    EXPECT_EQ(one.critical, one.name != "glass") << one.name;
  EXPECT_DOUBLE_EQ(result->work[3].total_float_min, 30);
  EXPECT_DOUBLE_EQ(result->work[3].late_start_min, 60);
  EXPECT_EQ(result->next, std::vector<std::string>{"strip"});
}

TEST(ReadyBy, ThePromiseIsCountedAmongTheDrawnFinishes) {
  ReadyBy in;
  in.work = {{"paint", 100, 200, 300, false, {}}};
  in.trials = 20000;
  in.promised_min = 200;
  const auto result = ready_by(in);
  // Symmetric: half before the middle; a tenth under 100 + sqrt(0.1 * 200 * 100) = 144.72.
  EXPECT_NEAR(*result->promise_percent, 50, 1.1);
  EXPECT_NEAR(*result->p10_min, 144.72, 2);
  EXPECT_NEAR(*result->p90_min, 255.28, 2);
  in.promised_min = 99;
  EXPECT_DOUBLE_EQ(*ready_by(in)->promise_percent, 0);
  in.promised_min = 300;
  EXPECT_DOUBLE_EQ(*ready_by(in)->promise_percent, 100);
  in.trials = 0;
  EXPECT_FALSE(ready_by(in)->p50_min);
}

TEST(ReadyBy, DurationsThatContradictThemselvesAreRefused) {
  ReadyBy in;
  in.work = {{"paint", 100, 90, 300, false, {}}};
  EXPECT_EQ(ready_by(in).error().subject, "work[0].likely_min");
  in.work = {{"paint", 100, 200, 150, false, {}}};
  EXPECT_EQ(ready_by(in).error().subject, "work[0].most_min");
}

}  // namespace
}  // namespace jambline::trade
