#include "folds/account.h"

#include <algorithm>

#include "folds/dirt_of_car.h"
#include "folds/worked.h"

namespace jambline::folds {

namespace {

bool sends_back(job::Verdict verdict) {
  return verdict == job::Verdict::Redo || verdict == job::Verdict::BackToBody;
}

void add_operations(const CarView& car, Account& out) {
  for (const auto& one : car.operations) {
    AccountOperation operation{one.operation, one.stage,        one.title,
                               one.work,      one.estimate_min, one.done};
    for (const auto& span : car.worked) {
      if (span.operation != one.operation) continue;
      operation.last_ms = std::max(operation.last_ms, span.end_ms);
      auto person = std::lower_bound(
          operation.clocked.begin(), operation.clocked.end(), span.person,
          [](const AccountClock& clock, const PersonId& id) { return clock.person < id; });
      if (person == operation.clocked.end() || person->person != span.person)
        person = operation.clocked.insert(person, {span.person, 0});
      person->ms += span.end_ms - span.start_ms;
    }
    if (one.work != job::WorkKind::FirstTime) {
      if (!one.why.empty()) operation.why = one.why;
      if (!one.heads.empty()) operation.entry = one.heads.back();
    }
    out.operations.push_back(std::move(operation));
  }
}

void add_panels(const CarView& car, Account& out) {
  for (const auto& one : car.panels) {
    if (!face_was_sprayed(one.plan)) continue;
    AccountPanel panel{one.plan.panel, {}, {}};
    bool again = false;
    for (const auto& look : one.looks) {
      panel.looks.push_back({look.verdict, look.wall_ms, look.entry});
      again = again || sends_back(look.verdict);
    }
    if (again) {
      for (const auto& mark : one.marks) panel.defects.push_back(mark.defect);
      std::sort(panel.defects.begin(), panel.defects.end());
      panel.defects.erase(std::unique(panel.defects.begin(), panel.defects.end()),
                          panel.defects.end());
    }
    out.panels.push_back(std::move(panel));
  }
}

void add_sprays(const CarView& car, Account& out) {
  for (const auto& one : car.air.sprays) {
    AccountSpray spray{one.booth, one.respirator, one.by, one.at.wall_ms, one.entry, {}, {}};
    for (const auto& check : one.checks) {
      if (check.answer != job::CutAnswer::No) continue;
      if (job::class_of(check.item) == job::CheckClass::Must)
        spray.passed_over.push_back({check.item, check.reason, check.note});
      else if (job::class_of(check.item) == job::CheckClass::Should)
        spray.not_met.push_back(check.item);
    }
    out.sprays.push_back(std::move(spray));
  }
  for (const auto& one : car.air.without)
    out.without.push_back({one.booth, one.by, one.at.wall_ms, one.items, one.entry});
}

void add_stages(const CarView& car, Account& out) {
  for (const auto& stage : car.stages) {
    if (!stage.done) {
      if (!out.next_stage) out.next_stage = stage.stage;
      continue;
    }
    AccountStage done{
        stage.stage, stage.said_ms, stage.shots_missing.value_or(0), stage.without_shots, {}};
    if (done.missing > 0 && !stage.heads.empty()) done.entry = stage.heads.back();
    out.stages.push_back(done);
  }
}

}  // namespace

Account account_of(const CarView& car) {
  Account out;
  out.job = car.job;
  out.plate = car.plate;
  out.opened_ms = car.opened_ms;
  out.promised_ms = car.promised_ms;
  if (car.promised_ms && !car.promise_heads.empty()) out.promised_entry = car.promise_heads.back();
  out.delivered_ms = car.delivered_ms;
  if (car.delivered_entry) out.delivered_entry = car.delivered_entry;
  add_operations(car, out);
  for (const auto& wait : worked_of(car).waits)
    out.waits.push_back({wait.reason, wait.start_ms, wait.end_ms});
  add_panels(car, out);
  add_sprays(car, out);
  for (const auto& one : car.visit.comebacks)
    out.comebacks.push_back({one.complaint, one.wall_ms, one.entry});
  add_stages(car, out);
  if (out.delivered_ms) {
    std::int64_t last_ms = *out.delivered_ms;
    for (const auto& one : out.operations) last_ms = std::max(last_ms, one.last_ms);
    for (const auto& one : out.sprays) last_ms = std::max(last_ms, one.at_ms);
    for (const auto& one : out.without) last_ms = std::max(last_ms, one.at_ms);
    for (const auto& one : out.comebacks) last_ms = std::max(last_ms, one.at_ms);
    out.last_ms = last_ms;
  }
  return out;
}

bool reaches_into(const Account& account, std::int64_t from_ms, std::int64_t to_ms) {
  return account.opened_ms < to_ms && account.last_ms.value_or(INT64_MAX) >= from_ms;
}

}  // namespace jambline::folds
