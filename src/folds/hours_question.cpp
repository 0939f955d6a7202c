#include "folds/hours_question.h"

#include <map>
#include <set>
#include <tuple>

#include "base/spans.h"

namespace jambline::folds {

namespace {

struct HoursSums {
  HoursRow row;
  std::vector<double> ratios;
  std::set<JobId> cars;

  // `part` of the operation's estimate; `ms` of its clock.
  void add(const Account& car, const AccountOperation& operation, std::int64_t ms, double part) {
    const double minutes = static_cast<double>(ms) / ms_per_min;
    row.cases.push_back(
        {car.job, car.plate, operation.last_ms, minutes, operation.entry, operation.operation});
    const bool again =
        operation.work == job::WorkKind::Redo || operation.work == job::WorkKind::Comeback;
    if (again) {
      ++row.again;
      row.again_min += minutes;
    } else if (operation.estimate_min <= 0) {
      ++row.without_estimate;
      row.without_estimate_min += minutes;
    } else {
      ++row.operations;
      cars.insert(car.job);
      row.estimate_min += operation.estimate_min * part;
      row.clocked_min += minutes;
      ratios.push_back(static_cast<double>(operation.clocked_ms()) / ms_per_min /
                       operation.estimate_min);
    }
  }
  HoursRow finished() {
    row.cars = static_cast<int>(cars.size());
    row.ratio = quartiles(std::move(ratios));
    most_first(row.cases);
    return std::move(row);
  }
};

double all_min(const HoursRow& row) {
  return row.clocked_min + row.without_estimate_min + row.again_min;
}

}  // namespace

HoursAnswer hours_question(const std::vector<Account>& accounts, HoursBy by, const Period& period,
                           const std::string& zone) {
  using Key = std::tuple<std::optional<job::Stage>, std::string, std::optional<PersonId>>;
  HoursAnswer out;
  out.by = by;
  HoursSums all;
  std::map<Key, HoursSums> rows;
  Months months(zone);
  const auto row_of = [&rows](const Key& key) -> HoursSums& {
    auto& sums = rows[key];
    std::tie(sums.row.stage, sums.row.title, sums.row.person) = key;
    return sums;
  };
  for (const auto& car : accounts)
    for (const auto& operation : car.operations) {
      const std::int64_t ms = operation.clocked_ms();
      if (ms <= 0 || !period.holds(operation.last_ms)) continue;
      if (!operation.done) {
        ++out.open;
        continue;
      }
      all.add(car, operation, ms, 1);
      if (by == HoursBy::Operation) {
        row_of(Key{operation.stage, operation.title, std::nullopt}).add(car, operation, ms, 1);
      } else if (by == HoursBy::Month) {
        row_of(Key{std::nullopt, months.of(operation.last_ms), std::nullopt})
            .add(car, operation, ms, 1);
      } else {
        for (const auto& one : operation.clocked)
          row_of(Key{std::nullopt, {}, one.person})
              .add(car, operation, one.ms, static_cast<double>(one.ms) / static_cast<double>(ms));
      }
    }
  for (auto& [key, sums] : rows) {
    HoursRow row = sums.finished();
    if (by == HoursBy::Month) row.month = std::exchange(row.title, {});
    out.rows.push_back(std::move(row));
  }
  if (by != HoursBy::Month)
    std::stable_sort(out.rows.begin(), out.rows.end(),
                     [](const auto& a, const auto& b) { return all_min(a) > all_min(b); });
  out.all = all.finished();
  return out;
}

}  // namespace jambline::folds
