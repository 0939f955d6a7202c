// Dirt by area: which cars count, and that a rate stands with its nibs, area and cars.
#include "folds/dirt_question.h"

#include <gtest/gtest.h>

#include "tests/folds/accounts.h"

namespace jambline::folds {
namespace {

Lesson sprayed(int number, double hour, std::int64_t nibs, double area_m2,
               std::vector<PersonId> painters, std::optional<BoothId> booth = {}) {
  Lesson out;
  out.job.bytes[15] = static_cast<std::uint8_t>(number);
  out.counted = true;
  out.sprayed_ms = at_hour(hour);
  out.nibs = nibs;
  out.sprayed_m2 = area_m2;
  out.painters = std::move(painters);
  out.booth = booth;
  return out;
}

TEST(DirtQuestion, PoolsNibsAndAreaAndNamesTheCars) {
  const BoothId booth{{4}};
  auto half_looked_at = sprayed(3, 30, 99, 1, {ivo});
  half_looked_at.counted = false;
  const std::vector<Lesson> lessons{sprayed(1, 1, 6, 2, {ivo}, booth),
                                    sprayed(2, 24 * 12, 3, 4, {ivo, mara}), half_looked_at};
  const auto answer = dirt_question(lessons, {car_number(1, 0)}, Period{}, new_york);
  EXPECT_EQ(answer.all.cars, 2);
  EXPECT_EQ(answer.all.nibs, 9);
  EXPECT_DOUBLE_EQ(answer.all.sprayed_m2, 6);
  EXPECT_DOUBLE_EQ(answer.all.nibs_per_m2, 1.5);
  EXPECT_DOUBLE_EQ(answer.all.of_cars->most, 3);
  EXPECT_EQ(answer.left_out, 1);
  ASSERT_EQ(answer.all.cases.size(), 2U);
  EXPECT_EQ(answer.all.cases[0].plate, "K 1");
  ASSERT_EQ(answer.months.size(), 2U);
  EXPECT_EQ(answer.months[0].month, "2026-09");
  ASSERT_EQ(answer.booths.size(), 2U);
  EXPECT_FALSE(answer.booths[0].booth) << "most area first";
  ASSERT_EQ(answer.painters.size(), 2U);
  EXPECT_EQ(answer.painters[0].painter, ivo);
  EXPECT_EQ(answer.painters[0].cars, 2);
  EXPECT_EQ(answer.painters[1].nibs, 3);
  EXPECT_EQ(dirt_question(lessons, {}, {at_hour(0), at_hour(24)}, new_york).all.cars, 1);
}

}  // namespace
}  // namespace jambline::folds
