#include "folds/pictures_question.h"

#include <map>

#include "folds/shots_of_car.h"

namespace jambline::folds {

namespace {
void note_stage(const Account& car, const AccountStage& stage, MissingShotsRow& row) {
  ++row.ended;
  if (stage.missing <= 0) return;
  ++row.with_missing;
  row.missing += stage.missing;
  row.cases.push_back(
      {car.job, car.plate, stage.at_ms, static_cast<double>(stage.missing), stage.entry});
}
template <class Key>
std::vector<MissingShotsRow> taken_rows(std::map<Key, MissingShotsRow>& rows) {
  std::vector<MissingShotsRow> out;
  for (auto& [key, row] : rows) {
    most_first(row.cases);
    out.push_back(std::move(row));
  }
  return out;
}
}  // namespace

PicturesAnswer pictures_question(const std::vector<Account>& accounts, const ShopView& shop,
                                 const Period& period) {
  PicturesAnswer out;
  std::map<job::Stage, MissingShotsRow> stages;
  std::map<std::optional<job::WithoutShots>, MissingShotsRow> reasons;
  std::map<std::string, MissingShotsRow> months;
  Months names(shop.zone);
  for (const auto& car : accounts)
    for (const auto& stage : car.stages) {
      if (!period.holds(stage.at_ms)) continue;
      if (stage.missing <= 0 && shots_of(shop, stage.stage).empty()) continue;
      note_stage(car, stage, out.all);
      auto& of_stage = stages[stage.stage];
      of_stage.stage = stage.stage;
      note_stage(car, stage, of_stage);
      auto& month = months[names.of(stage.at_ms)];
      month.month = names.of(stage.at_ms);
      note_stage(car, stage, month);
      if (stage.missing <= 0) continue;
      auto& reason = reasons[stage.why];
      reason.why = stage.why;
      note_stage(car, stage, reason);
      reason.ended = 0;
    }
  most_first(out.all.cases);
  out.stages = taken_rows(stages);
  out.reasons = taken_rows(reasons);
  out.months = taken_rows(months);
  std::stable_sort(out.reasons.begin(), out.reasons.end(),
                   [](const auto& a, const auto& b) { return a.with_missing > b.with_missing; });
  return out;
}

}  // namespace jambline::folds
