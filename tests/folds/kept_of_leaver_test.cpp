// Until when the records of a leaver are usually kept. Days since 1970 by GNU date; the years are
// those of tests/outside/usual_retentions.csv.
#include "folds/kept_of_leaver.h"

#include <gtest/gtest.h>

namespace jambline::folds {
namespace {

using job::RecordClass;
constexpr int march_8_2026 = 20'520;
const PersonId leaver{{1}};

ShopView shop_of_leaver() {
  ShopView shop;
  shop.zone = "America/New_York";
  return shop;
}

TEST(KeptOfLeaver, NothingIsKeptOfWhoDidNothing) {
  const auto kept = kept_of_leaver(shop_of_leaver(), leaver, {});
  EXPECT_TRUE(kept.empty());
  EXPECT_EQ(kept_longest(kept), nullptr);
}

TEST(KeptOfLeaver, WhoWorkedIsKeptForThePayrollAndWhoSprayedForTheSpraying) {
  const auto worked = kept_of_leaver(shop_of_leaver(), leaver, {march_8_2026, {}});
  ASSERT_EQ(worked.size(), 3U);
  EXPECT_EQ(worked[0], (KeptRecord{RecordClass::Payroll, march_8_2026, 21'616}));    // 2029-03-08
  EXPECT_EQ(worked[1], (KeptRecord{RecordClass::TimeCards, march_8_2026, 21'251}));  // 2028-03-08
  EXPECT_EQ(worked[2], (KeptRecord{RecordClass::CarJobs, march_8_2026, {}}));
  ASSERT_NE(kept_longest(worked), nullptr);
  EXPECT_EQ(kept_longest(worked)->record, RecordClass::Payroll);
  const auto sprayed = kept_of_leaver(shop_of_leaver(), leaver, {march_8_2026, march_8_2026});
  EXPECT_EQ(kept_longest(sprayed)->record, RecordClass::Spraying);
  EXPECT_EQ(kept_longest(sprayed)->over_day, 22'346);  // 2031-03-08
}

TEST(KeptOfLeaver, ASampleHoldsForThirtyYearsFromItsDayInTheShopsZone) {
  ShopView shop = shop_of_leaver();
  SampleView sample;
  sample.person = leaver;
  sample.to_ms = 1'773'021'600'000;  // 2026-03-09 02:00 UTC, still March 8 in New York
  shop.air.samples = {sample};
  sample.person = PersonId{{2}};
  sample.to_ms += 864'000'000;
  shop.air.samples.push_back(sample);
  const auto kept = kept_of_leaver(shop, leaver, {});
  ASSERT_EQ(kept.size(), 1U);
  EXPECT_EQ(kept[0], (KeptRecord{RecordClass::Exposure, march_8_2026, 31'478}));  // 2056-03-08
}

TEST(KeptOfLeaver, AFitTestBindsOnlyWhereTheShopSaysYears) {
  ShopView shop = shop_of_leaver();
  PersonAirView air;
  air.person = leaver;
  FitTestView test;
  test.said.tested_day = march_8_2026;
  air.fit_tests = {test};
  shop.air.people = {air};
  EXPECT_EQ(kept_of_leaver(shop, leaver, {}),
            (std::vector<KeptRecord>{{RecordClass::FitTests, march_8_2026, {}}}));
  shop.retentions = {{RecordClass::FitTests, 2, {}}};
  EXPECT_EQ(kept_longest(kept_of_leaver(shop, leaver, {}))->over_day, 21'251);
}

TEST(KeptOfLeaver, TheShopsOwnYearsWinEvenWhenTheyAreFewer) {
  ShopView shop = shop_of_leaver();
  shop.retentions = {{RecordClass::Payroll, 1, {}}, {RecordClass::CarJobs, 7, {}}};
  const auto kept = kept_of_leaver(shop, leaver, {march_8_2026, {}});
  EXPECT_EQ(kept[0].over_day, 20'885);  // 2027-03-08
  EXPECT_EQ(kept_longest(kept)->record, RecordClass::CarJobs);
  EXPECT_EQ(kept_longest(kept)->over_day, 23'077);  // 2033-03-08
}

}  // namespace
}  // namespace jambline::folds
