#include "folds/late_question.h"

#include <map>
#include <tuple>

#include "base/spans.h"
#include "folds/flow_question.h"

namespace jambline::folds {

namespace {

using HoldKey = std::tuple<HeldBy, std::optional<job::WaitReason>, std::optional<job::Stage>>;

struct LateHold {
  HoldKey key{HeldBy::NotSaid, {}, {}};
  double hours = 0;
};

LateHold hold_of(const Account& car, std::int64_t until_ms) {
  LateHold out;
  std::int64_t longest_ms = 0;
  for (std::size_t i = 0; i < enum_words<job::WaitReason>.size(); ++i) {
    const auto reason = static_cast<job::WaitReason>(i);
    const std::int64_t ms = waited_ms(car, reason, car.opened_ms, until_ms);
    if (ms <= longest_ms) continue;
    longest_ms = ms;
    out = {{HeldBy::Wait, reason, {}}, static_cast<double>(ms) / ms_per_h};
  }
  if (longest_ms > 0) return out;
  std::int64_t redo_ms = 0;
  for (const auto& one : car.operations)
    if (one.work == job::WorkKind::Redo) redo_ms += one.clocked_ms();
  if (redo_ms > 0) return {{HeldBy::Redo, {}, {}}, static_cast<double>(redo_ms) / ms_per_h};
  if (!car.delivered_ms && car.next_stage) return {{HeldBy::Stage, {}, car.next_stage}, 0};
  return out;
}

struct LateSums {
  std::vector<double> late_h;
  double held_h = 0;
  std::vector<QuestionCase> cases;
};

}  // namespace

LateAnswer late_question(const std::vector<Account>& accounts, const Period& period,
                         const std::string& zone, std::int64_t now_ms) {
  LateAnswer out;
  std::map<std::string, LateMonth> months;
  std::map<HoldKey, LateSums> holds;
  std::vector<double> all_late_h;
  Months names(zone);
  for (const auto& car : accounts) {
    if (!car.promised_ms || !period.holds(*car.promised_ms)) continue;
    if (!car.delivered_ms && *car.promised_ms > now_ms) continue;
    const std::int64_t until_ms = car.delivered_ms.value_or(now_ms);
    const std::string month = names.of(*car.promised_ms);
    LateMonth& of_month = months[month];
    of_month.month = month;
    ++of_month.due;
    ++out.due;
    if (until_ms <= *car.promised_ms) continue;
    const double late_h = static_cast<double>(until_ms - *car.promised_ms) / ms_per_h;
    const QuestionCase one{car.job, car.plate, *car.promised_ms, late_h,
                           car.delivered_entry ? car.delivered_entry : car.promised_entry};
    ++out.late;
    ++of_month.late;
    out.still_here += car.delivered_ms ? 0 : 1;
    of_month.cases.push_back(one);
    all_late_h.push_back(late_h);
    const LateHold hold = hold_of(car, until_ms);
    LateSums& sums = holds[hold.key];
    sums.late_h.push_back(late_h);
    sums.held_h += hold.hours;
    sums.cases.push_back(one);
  }
  out.hours_late = quartiles(std::move(all_late_h));
  for (auto& [name, month] : months) {
    most_first(month.cases);
    out.months.push_back(std::move(month));
  }
  for (auto& [key, sums] : holds) {
    LateRow row;
    std::tie(row.held, row.wait, row.stage) = key;
    row.cars = static_cast<int>(sums.cases.size());
    row.hours_late = quartiles(std::move(sums.late_h));
    row.held_h = sums.held_h;
    most_first(sums.cases);
    row.cases = std::move(sums.cases);
    out.rows.push_back(std::move(row));
  }
  std::stable_sort(out.rows.begin(), out.rows.end(),
                   [](const auto& a, const auto& b) { return a.cars > b.cars; });
  return out;
}

}  // namespace jambline::folds
