#include "folds/due_question.h"

#include <set>
#include <tuple>

#include "base/spans.h"
#include "folds/booth_state.h"

namespace jambline::folds {

namespace {
constexpr int due_soon_days = 30;

void set_state(DueRow& row, std::int64_t now_ms) {
  if (!row.due_day) {
    row.state = DueState::Missing;
    return;
  }
  row.days_left = *row.due_day - static_cast<int>(now_ms / jambline::day_ms);
  row.state = row.days_left < 0                ? DueState::Expired
              : row.days_left <= due_soon_days ? DueState::Soon
                                               : DueState::InDate;
}

std::vector<DueRow> rows_of(const ShopView& shop) {
  std::vector<DueRow> out;
  for (const auto& person : shop.people) {
    const auto* air = shop.air.find(person.person);
    if (person.left || !air) continue;
    std::set<RespiratorId> seen;
    for (auto test = air->fit_tests.rbegin(); test != air->fit_tests.rend(); ++test) {
      const auto* respirator = shop.air.find(test->respirator);
      if (!seen.insert(test->respirator).second) continue;
      if (respirator && (respirator->said.retired || !job::fits_tightly(respirator->said.kind)))
        continue;
      DueRow row{DueTest::Fit, {}, person.person, test->respirator};
      row.due_day = test->said.tested_day + test->said.valid_days;
      if (!test->heads.empty()) row.entry = test->heads.back();
      out.push_back(std::move(row));
    }
  }
  for (const auto& booth : shop.booths) {
    if (!job::may_be_sprayed_in(booth.kind)) continue;
    DueRow row{DueTest::Clearance, {}, {}, {}, booth.booth};
    if (const auto* air = shop.air.find(booth.booth)) {
      if (const auto due_ms = smoke_test_due_ms(*air))
        row.due_day = static_cast<int>(*due_ms / jambline::day_ms);
      if (const auto* read = last_reading(air, job::BoothReading::SmokeTest))
        row.entry = read->entry;
    }
    out.push_back(std::move(row));
  }
  return out;
}

bool is_of(const AccountSpray& spray, const DueRow& row) {
  return row.test == DueTest::Fit ? spray.by == *row.person && spray.respirator == *row.respirator
                                  : spray.booth == *row.booth;
}

}  // namespace

DueAnswer due_question(const std::vector<Account>& accounts, const ShopView& shop,
                       const Period& period, std::int64_t now_ms) {
  DueAnswer out;
  out.rows = rows_of(shop);
  std::set<Hash> sprayed;
  for (auto& row : out.rows) {
    set_state(row, now_ms);
    out.tests += row.state == DueState::Missing ? 0 : 1;
    out.expired += row.state == DueState::Expired ? 1 : 0;
    out.missing += row.state == DueState::Missing ? 1 : 0;
    out.soon += row.state == DueState::Soon ? 1 : 0;
    if (row.state != DueState::Expired) continue;
    const std::int64_t out_ms = (*row.due_day + 1) * jambline::day_ms;
    for (const auto& car : accounts)
      for (const auto& spray : car.sprays) {
        if (!is_of(spray, row) || spray.at_ms < out_ms || spray.at_ms > now_ms ||
            !period.holds(spray.at_ms))
          continue;
        ++row.sprayed;
        sprayed.insert(spray.entry);
        row.cases.push_back({car.job, car.plate, spray.at_ms,
                             static_cast<double>(spray.at_ms - out_ms) / ms_per_day, spray.entry});
      }
    most_first(row.cases);
  }
  out.sprayed = static_cast<int>(sprayed.size());
  std::stable_sort(out.rows.begin(), out.rows.end(), [](const auto& a, const auto& b) {
    return std::tie(a.state, a.days_left) < std::tie(b.state, b.days_left);
  });
  return out;
}

}  // namespace jambline::folds
