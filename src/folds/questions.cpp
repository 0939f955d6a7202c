#include "folds/questions.h"

#include <cmath>
#include <set>
#include <tuple>

#include "base/zones.h"

namespace jambline::folds {

std::optional<Quartiles> quartiles(std::vector<double> values) {
  if (values.empty()) return std::nullopt;
  std::sort(values.begin(), values.end());
  const auto at = [&](double part) {
    const double place = part * static_cast<double>(values.size() - 1);
    const auto below = static_cast<std::size_t>(place);
    const std::size_t above = std::min(below + 1, values.size() - 1);
    return values[below] + (place - static_cast<double>(below)) * (values[above] - values[below]);
  };
  return Quartiles{
      static_cast<int>(values.size()), values.front(), at(0.25), at(0.5), at(0.75), values.back()};
}

std::string Months::of(std::int64_t ms) {
  if (ms >= from_ms_ && ms < to_ms_) return month_;
  auto date = local_date_at(zone_, ms);
  if (!date) {
    zone_ = "UTC";
    date = local_date_at(zone_, ms);
  }
  if (!date) return {};
  const auto day = local_day(zone_, *date);
  if (day) {
    from_ms_ = day->start_ms;
    to_ms_ = day->end_ms;
  }
  const std::string month = std::to_string(date->month);
  return month_ = std::to_string(date->year) + (month.size() < 2 ? "-0" : "-") + month;
}

void most_first(std::vector<QuestionCase>& cases) {
  std::sort(cases.begin(), cases.end(), [](const auto& a, const auto& b) {
    return std::tie(b.value, a.plate, a.at_ms, a.job, a.operation, a.entry) <
           std::tie(a.value, b.plate, b.at_ms, b.job, b.operation, b.entry);
  });
}

int cars_of(const std::vector<QuestionCase>& cases) {
  std::set<JobId> cars;
  for (const auto& one : cases) cars.insert(one.job);
  return static_cast<int>(cars.size());
}

}  // namespace jambline::folds
