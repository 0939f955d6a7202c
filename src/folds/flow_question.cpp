#include "folds/flow_question.h"

#include <map>

#include "base/spans.h"

namespace jambline::folds {

namespace {
struct FlowSums {
  std::vector<double> cycle_days;
  std::vector<double> touch_h;
  std::vector<QuestionCase> cases;
  FlowMonth finished(std::string month) {
    most_first(cases);
    return {std::move(month), quartiles(std::move(cycle_days)), quartiles(std::move(touch_h)),
            std::move(cases)};
  }
};
struct WaitSums {
  std::vector<double> hours;
  std::vector<QuestionCase> cases;
};
}  // namespace

std::int64_t waited_ms(const Account& car, job::WaitReason reason, std::int64_t from_ms,
                       std::int64_t to_ms) {
  std::vector<std::pair<std::int64_t, std::int64_t>> spans;
  for (const auto& wait : car.waits) {
    const std::int64_t start_ms = std::max(wait.start_ms, from_ms);
    const std::int64_t end_ms = std::min(wait.end_ms.value_or(to_ms), to_ms);
    if (wait.reason == reason && start_ms < end_ms) spans.emplace_back(start_ms, end_ms);
  }
  std::sort(spans.begin(), spans.end());
  std::int64_t sum = 0;
  std::int64_t counted_to_ms = INT64_MIN;
  for (const auto& [start_ms, end_ms] : spans) {
    if (end_ms <= counted_to_ms) continue;
    sum += end_ms - std::max(start_ms, counted_to_ms);
    counted_to_ms = end_ms;
  }
  return sum;
}

FlowAnswer flow_question(const std::vector<Account>& accounts, const Period& period,
                         const std::string& zone) {
  FlowSums all;
  std::map<std::string, FlowSums> months;
  std::map<job::WaitReason, WaitSums> waits;
  std::vector<double> percent;
  Months names(zone);
  for (const auto& car : accounts) {
    if (!car.delivered_ms || !period.holds(*car.delivered_ms)) continue;
    const auto cycle_ms = static_cast<double>(*car.delivered_ms - car.opened_ms);
    double touch_ms = 0;
    for (const auto& one : car.operations) touch_ms += static_cast<double>(one.clocked_ms());
    const double cycle_days = cycle_ms / ms_per_day;
    for (FlowSums* sums : {&all, &months[names.of(*car.delivered_ms)]}) {
      sums->cycle_days.push_back(cycle_days);
      sums->touch_h.push_back(touch_ms / ms_per_h);
      sums->cases.push_back(
          {car.job, car.plate, *car.delivered_ms, cycle_days, car.delivered_entry});
    }
    if (cycle_ms > 0) percent.push_back(100 * touch_ms / cycle_ms);
    for (std::size_t i = 0; i < enum_words<job::WaitReason>.size(); ++i) {
      const auto reason = static_cast<job::WaitReason>(i);
      const std::int64_t ms = waited_ms(car, reason, car.opened_ms, *car.delivered_ms);
      if (ms <= 0) continue;
      const double hours = static_cast<double>(ms) / ms_per_h;
      waits[reason].hours.push_back(hours);
      waits[reason].cases.push_back({car.job, car.plate, *car.delivered_ms, hours});
    }
  }
  FlowAnswer out;
  out.all = all.finished({});
  out.touch_percent = quartiles(std::move(percent));
  for (auto& [month, sums] : months) out.months.push_back(sums.finished(month));
  for (auto& [reason, sums] : waits) {
    FlowWait row{reason, static_cast<int>(sums.hours.size())};
    for (const double hours : sums.hours) row.hours += hours;
    row.hours_a_car = quartiles(std::move(sums.hours));
    most_first(sums.cases);
    row.cases = std::move(sums.cases);
    out.waits.push_back(std::move(row));
  }
  std::stable_sort(out.waits.begin(), out.waits.end(),
                   [](const auto& a, const auto& b) { return a.hours > b.hours; });
  return out;
}

}  // namespace jambline::folds
