// The air of the demo shop: kept by the acts, with what a manager has to see to.
#include <gtest/gtest.h>
#include <set>

#include "folds/booth_state.h"
#include "folds/cure_of_car.h"
#include "folds/exposure_of_shift.h"
#include "folds/floor_view.h"
#include "tests/demo/made_shop.h"

namespace jambline::demo {
namespace {

const Made& shop() {
  static const Made made(DemoOptions{.delivered = 12});
  return made;
}
Moment now() {
  return DemoOptions{}.now;
}

TEST(DemoAir, BoothsAreReadAndOneSmokeTestIsOverdue) {
  const auto view = shop().shop.view();
  int overdue = 0;
  for (const auto& booth : view.booths) {
    const auto* air = view.air.find(booth.booth);
    ASSERT_TRUE(air);
    EXPECT_TRUE(air->facts.volume_m3 && air->facts.most_pressure_pa && air->facts.wanted_m_s);
    const auto* pressure = folds::last_reading(air, job::BoothReading::FilterPressure);
    ASSERT_TRUE(pressure);
    EXPECT_LT(now().wall_ms - pressure->happened_ms, 86'400'000) << "read this morning";
    EXPECT_TRUE(folds::filter_trend(view, *air));
    EXPECT_TRUE(folds::booth_airflow(*air));
    const auto due = folds::smoke_test_due_ms(*air);
    ASSERT_TRUE(due);
    overdue += *due < now().wall_ms ? 1 : 0;
    const auto state = folds::booth_state(booth, air, now());
    EXPECT_EQ(state.word, folds::BoothWordNow::Idle) << "every gun is down and every booth cleared";
  }
  EXPECT_EQ(overdue, 1);
}

TEST(DemoAir, OneFitTestAndOneTrainingHaveRunOut) {
  const auto view = shop().shop.view();
  const auto today = static_cast<int>(now().wall_ms / 86'400'000);
  int expired = 0, due = 0;
  for (const auto& person : view.air.people) {
    EXPECT_FALSE(person.do_not_spray);
    for (const auto& test : person.fit_tests)
      expired += test.said.tested_day + test.said.valid_days < today ? 1 : 0;
    for (const auto& one : person.dues) due += one.due_day < today ? 1 : 0;
  }
  EXPECT_EQ(expired, 1);
  EXPECT_EQ(due, 1);
  EXPECT_TRUE(view.air.breathing_air);
  EXPECT_EQ(view.air.products.size(), 6U);
}

TEST(DemoAir, OneShiftIsBelowItsLimitsAndOneIsOverACeiling) {
  const auto view = shop().shop.view();
  const auto shifts = folds::shifts_of(view.air);
  ASSERT_EQ(shifts.size(), 2U);
  std::vector<int> over;
  for (const auto& shift : shifts) {
    const auto result = trade::compare_exposure(folds::exposure_of(shift, view.air).asked);
    ASSERT_TRUE(result);
    over.push_back(0);
    for (const auto& one : result->against) over.back() += one.over ? 1 : 0;
  }
  EXPECT_EQ(over, (std::vector<int>{1, 0})) << "the newest first";
}

TEST(DemoAir, CarsInWorkAreAtDifferentMilestonesAndOneIsNotDriven) {
  const auto view = shop().shop.view();
  std::set<trade::CureWord> sand;
  int clocks = 0, held = 0, sprays = 0;
  for (const auto& car : shop().cars) {
    if (car.delivered_ms) {
      EXPECT_TRUE(car.air.mixes.empty()) << "that was before the shop kept it";
      continue;
    }
    sprays += static_cast<int>(car.air.sprays.size());
    EXPECT_TRUE(car.air.without.empty());
    for (const auto& spray : car.air.sprays)
      for (const auto& check : spray.checks)
        EXPECT_TRUE(job::class_of(check.item) != job::CheckClass::Stop ||
                    check.answer == job::CutAnswer::Yes);
    for (const auto& clock : folds::cure_of_car(car, view, now())) {
      ++clocks;
      if (clock.asked->steps.size() < 2) continue;
      ASSERT_TRUE(clock.result) << "each group was read";
      ASSERT_TRUE(*clock.result);
      for (const auto& standing : (*clock.result)->standings)
        if (standing.milestone == trade::CureMilestone::SandFrom) sand.insert(standing.word);
    }
    const auto said = folds::do_not_drive(car, view, now());
    if (!said) continue;
    ++held;
    ASSERT_TRUE(said->until_ms);
    EXPECT_GT(*said->until_ms, now().wall_ms);
    EXPECT_EQ(folds::floor_row(car).glass.size(), 1U);
  }
  EXPECT_GE(sprays, 6);
  EXPECT_GE(clocks, 12);
  EXPECT_TRUE(sand.count(trade::CureWord::Reached));
  EXPECT_TRUE(sand.count(trade::CureWord::NotYet));
  EXPECT_EQ(held, 1);
}

}  // namespace
}  // namespace jambline::demo
