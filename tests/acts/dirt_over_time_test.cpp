// The cars and changes of a shop in their order, by hand.
#include "folds/dirt_over_time.h"

#include <gtest/gtest.h>

#include "base/spans.h"

namespace jambline::folds {
namespace {

using job::BoothEvent;
using job::DirtCause;

const BoothId booth_a{{1}}, booth_b{{2}};
const PersonId ivo{{3}}, jo{{4}};

Lesson car(int day, std::int64_t nibs, const BoothId& booth = booth_a) {
  Lesson out;
  out.job.bytes[0] = static_cast<std::uint8_t>(day);
  out.counted = true;
  out.sprayed_ms = day * day_ms;
  out.booth = booth;
  out.painters = {ivo};
  out.nibs = nibs;
  out.sprayed_m2 = 2;
  return out;
}

BoothEventView done(double day, BoothEvent what, const BoothId& booth = booth_a) {
  BoothEventView out;
  out.booth = booth;
  out.what = what;
  out.happened_ms = static_cast<std::int64_t>(day * static_cast<double>(day_ms));
  return out;
}

std::vector<Lesson> cars(int from, int until, std::int64_t nibs) {
  std::vector<Lesson> out;
  for (int day = from; day < until; ++day) out.push_back(car(day, nibs));
  return out;
}

TEST(DirtOverTime, CarsStandByTheirSprayingAndChangesBetweenThem) {
  auto lessons = cars(1, 13, 6);
  const auto later = cars(13, 22, 1);
  lessons.insert(lessons.begin(), later.begin(), later.end());
  const auto dirt = dirt_over_time(lessons, {done(12.5, BoothEvent::FiltersChanged)}, {});
  ASSERT_EQ(dirt.chart.jobs.size(), 21U);
  EXPECT_EQ(dirt.chart.jobs[0].day, 1);
  EXPECT_EQ(dirt.chart.jobs[20].marks, 1);
  ASSERT_EQ(dirt.changes.size(), 1U);
  EXPECT_EQ(dirt.changes[0].cars_before, 12);
  EXPECT_EQ(dirt.changes[0].cars_after, 9);
  EXPECT_FALSE(dirt.changes[0].enough()) << "nine are too few";
  const auto result = trade::dirt_chart(dirt.chart);
  ASSERT_TRUE(result);
  const auto* effect = effect_of(dirt, 0, *result);
  ASSERT_TRUE(effect);
  EXPECT_DOUBLE_EQ(effect->ratio, 1.0 / 6);
  EXPECT_LT(effect->holm_chance, flagged_below);
  EXPECT_FALSE(flagged(*effect)) << "too early to say";
  auto one_more = lessons;
  one_more.push_back(car(22, 1));
  const auto enough = dirt_over_time(one_more, {done(12.5, BoothEvent::FiltersChanged)}, {});
  EXPECT_TRUE(enough.changes[0].enough());
  const auto now = trade::dirt_chart(enough.chart);
  ASSERT_TRUE(now);
  EXPECT_TRUE(flagged(*effect_of(enough, 0, *now)));
}

TEST(DirtOverTime, WhatIsDoneWithNoCarBetweenIsOneChange) {
  const auto dirt =
      dirt_over_time(cars(10, 40, 3),
                     {done(20.7, BoothEvent::Cleaned, booth_b), done(5, BoothEvent::NewHose),
                      done(20.5, BoothEvent::FiltersChanged), done(7, BoothEvent::NewSuits),
                      done(21.5, BoothEvent::NewSuits), done(50, BoothEvent::NewHose)},
                     {});
  ASSERT_EQ(dirt.changes.size(), 4U);
  ASSERT_EQ(dirt.chart.events.size(), 4U);
  EXPECT_EQ(dirt.changes[0].done.size(), 2U);
  EXPECT_EQ(dirt.changes[0].cars_before, 0);
  EXPECT_EQ(dirt.changes[1].done.size(), 2U);
  EXPECT_EQ(dirt.changes[1].done[0].what, BoothEvent::FiltersChanged);
  EXPECT_EQ(dirt.changes[1].cars_before, 11);
  EXPECT_EQ(dirt.changes[1].cars_after, 1);
  EXPECT_EQ(dirt.changes[3].cars_after, 0);
  const auto result = trade::dirt_chart(dirt.chart);
  ASSERT_TRUE(result);
  EXPECT_FALSE(effect_of(dirt, 0, *result));
  EXPECT_EQ(effect_of(dirt, 1, *result)->name, "filters changed");
  EXPECT_EQ(effect_of(dirt, 1, *result)->jobs_before, 11);
  EXPECT_EQ(effect_of(dirt, 2, *result)->name, "new suits");
  EXPECT_FALSE(effect_of(dirt, 3, *result));
}

TEST(DirtOverTime, OnlyTheBoothThePainterAndTheTimeAskedForAreThere) {
  auto lessons = cars(1, 4, 2);
  lessons.push_back(car(5, 7, booth_b));
  lessons.back().painters = {ivo, jo};
  lessons.push_back(car(6, 8, booth_b));
  lessons.back().counted = false;
  const std::vector<BoothEventView> events{done(2, BoothEvent::NewHose),
                                           done(3, BoothEvent::Cleaned, booth_b)};
  const auto other = dirt_over_time(lessons, events, {.booth = booth_b});
  ASSERT_EQ(other.cars.size(), 1U);
  EXPECT_EQ(other.cars[0].nibs, 7);
  EXPECT_EQ(other.left_out, 1);
  ASSERT_EQ(other.changes.size(), 1U);
  EXPECT_EQ(other.chart.events[0].name, "cleaned");
  EXPECT_EQ(dirt_over_time(lessons, events, {.painter = jo}).cars.size(), 1U);
  EXPECT_EQ(dirt_over_time(lessons, events, {.painter = ivo}).cars.size(), 4U);
  const auto late = dirt_over_time(lessons, events, {.since_ms = 3 * day_ms});
  EXPECT_EQ(late.cars.size(), 2U);
  EXPECT_EQ(late.changes.size(), 1U);
}

TEST(DirtOverTime, CausesAreRankedWithLeftOpenAmongThemAndCleanCarsOwingNone) {
  auto lessons = cars(1, 9, 2);
  const auto say = [&](int number, std::optional<DirtCause> cause) {
    lessons[static_cast<std::size_t>(number)].cause_said = true;
    lessons[static_cast<std::size_t>(number)].cause = cause;
  };
  say(0, DirtCause::Suit);
  say(1, DirtCause::Hose);
  say(2, {});
  say(3, DirtCause::Hose);
  say(4, {});
  say(5, {});
  lessons[6].nibs = 0;
  const auto dirt = dirt_over_time(lessons, {}, {});
  EXPECT_EQ(dirt.causes,
            (std::vector<CauseCount>{{{}, 3}, {DirtCause::Hose, 2}, {DirtCause::Suit, 1}}));
  EXPECT_EQ(dirt.cause_not_said, 1);
}

}  // namespace
}  // namespace jambline::folds
