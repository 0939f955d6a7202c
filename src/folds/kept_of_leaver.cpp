#include "folds/kept_of_leaver.h"

#include <algorithm>

#include "base/zones.h"
#include "folds/hours_sheet.h"

namespace jambline::folds {

namespace {
std::optional<int> last_sample_day(const ShopView& shop, const PersonId& person) {
  std::optional<int> out;
  for (const auto& sample : shop.air.samples) {
    if (sample.person != person) continue;
    const auto date = local_date_at(shop.zone, sample.to_ms);
    if (date) out = std::max(out.value_or(0), days_between(LocalDate{1970, 1, 1}, *date));
  }
  return out;
}

std::optional<int> last_fit_test_day(const ShopView& shop, const PersonId& person) {
  std::optional<int> out;
  if (const auto* known = shop.air.find(person))
    for (const auto& test : known->fit_tests) out = std::max(out.value_or(0), test.said.tested_day);
  return out;
}
}  // namespace

std::vector<KeptRecord> kept_of_leaver(const ShopView& shop, const PersonId& person,
                                       const LastDays& days) {
  std::vector<KeptRecord> out;
  const auto keep = [&](job::RecordClass record, std::optional<int> last_day) {
    if (!last_day) return;
    const auto* own = shop.find(record);
    const auto years = job::kept_years(record, own ? own->years : std::nullopt);
    KeptRecord kept{record, *last_day};
    if (years) kept.over_day = job::day_years_later(*last_day, *years);
    out.push_back(kept);
  };
  keep(job::RecordClass::Payroll, days.worked_day);
  keep(job::RecordClass::TimeCards, days.worked_day);
  keep(job::RecordClass::Spraying, days.sprayed_day);
  keep(job::RecordClass::FitTests, last_fit_test_day(shop, person));
  keep(job::RecordClass::Exposure, last_sample_day(shop, person));
  keep(job::RecordClass::CarJobs, days.worked_day);
  return out;
}

const KeptRecord* kept_longest(const std::vector<KeptRecord>& records) {
  const auto longest = std::max_element(
      records.begin(), records.end(),
      [](const KeptRecord& a, const KeptRecord& b) { return a.over_day < b.over_day; });
  return longest == records.end() || !longest->over_day ? nullptr : &*longest;
}

}  // namespace jambline::folds
