#include "folds/first_time_question.h"

#include <map>

#include "base/spans.h"

namespace jambline::folds {

namespace {

bool settles(const AccountLook& look) {
  return look.verdict != job::Verdict::Ask && look.verdict != job::Verdict::NotLookedAt;
}
const AccountLook* sent_back_by(const AccountPanel& panel) {
  for (const auto& look : panel.looks)
    if (look.verdict == job::Verdict::Redo || look.verdict == job::Verdict::BackToBody)
      return &look;
  return nullptr;
}

void note_panel(const Account& car, const AccountLook& first, const AccountLook* back,
                FirstTimeMonth& sums) {
  ++sums.panels;
  if (back) {
    ++sums.sent_back;
    sums.cases.push_back({car.job, car.plate, back->at_ms, 1, back->entry});
  } else {
    ++sums.through;
    sums.clean_at_once += first.verdict == job::Verdict::Clean ? 1 : 0;
  }
}

template <class Row, class More>
void by_most(std::vector<Row>& rows, More more) {
  for (auto& row : rows) most_first(row.cases);
  std::stable_sort(rows.begin(), rows.end(), more);
}

}  // namespace

FirstTimeAnswer first_time_question(const std::vector<Account>& accounts, const Period& period,
                                    const std::string& zone) {
  FirstTimeAnswer out;
  std::map<std::string, FirstTimeMonth> months;
  std::map<std::optional<job::DefectKind>, SentBackKind> kinds;
  std::map<std::string, RedoReason> redo;
  Months names(zone);
  for (const auto& car : accounts) {
    for (const auto& panel : car.panels) {
      const auto first = std::find_if(panel.looks.begin(), panel.looks.end(), settles);
      if (first == panel.looks.end() || !period.holds(first->at_ms)) continue;
      const AccountLook* back = sent_back_by(panel);
      note_panel(car, *first, back, out.all);
      note_panel(car, *first, back, months[names.of(first->at_ms)]);
      if (!back) continue;
      std::vector<std::optional<job::DefectKind>> found(panel.defects.begin(), panel.defects.end());
      if (found.empty()) found.emplace_back();
      for (const auto& defect : found) {
        SentBackKind& kind = kinds[defect];
        kind.defect = defect;
        ++kind.panels;
        kind.cases.push_back({car.job, car.plate, back->at_ms, 1, back->entry});
      }
    }
    for (const auto& operation : car.operations) {
      const std::int64_t ms = operation.clocked_ms();
      if (operation.work != job::WorkKind::Redo || ms <= 0 || !period.holds(operation.last_ms))
        continue;
      const double minutes = static_cast<double>(ms) / ms_per_min;
      RedoReason& reason = redo[operation.why.value_or("")];
      reason.why = operation.why.value_or("");
      ++reason.operations;
      reason.clocked_min += minutes;
      reason.cases.push_back(
          {car.job, car.plate, operation.last_ms, minutes, operation.entry, operation.operation});
    }
    for (const auto& one : car.comebacks)
      if (period.holds(one.at_ms))
        out.came_back.push_back({car.job, car.plate, one.at_ms, 1, one.entry});
  }
  most_first(out.all.cases);
  most_first(out.came_back);
  for (auto& [month, sums] : months) {
    sums.month = month;
    most_first(sums.cases);
    out.months.push_back(std::move(sums));
  }
  for (auto& [defect, kind] : kinds) out.kinds.push_back(std::move(kind));
  for (auto& [why, reason] : redo) {
    reason.cars = cars_of(reason.cases);
    out.redo.push_back(std::move(reason));
  }
  by_most(out.kinds, [](const auto& a, const auto& b) { return a.panels > b.panels; });
  by_most(out.redo, [](const auto& a, const auto& b) { return a.clocked_min > b.clocked_min; });
  return out;
}

}  // namespace jambline::folds
