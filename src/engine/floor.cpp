#include "engine/floor.h"

#include <algorithm>
#include <set>

#include "engine/whole_log.h"

namespace jambline::engine {

namespace {

using Rows = std::vector<folds::FloorRow>;
using Cars = std::vector<shelf::Car>;

// Folds every job of the log in one pass.
Result<Cars> fold_all(log::EntryLog& log) {
  JAMBLINE_ASSIGN(const WholeLog whole, fold_whole_log(log));
  Cars out;
  out.reserve(whole.jobs.size());
  for (const auto& [job, fold] : whole.jobs) {
    const folds::CarView view = fold.view();
    if (view.opened) out.push_back(shelf::car_of(view));
  }
  return out;
}

// Folds the jobs that have entries after `arrival`; `erased`: texts of some were erased.
Result<Cars> fold_changed(log::EntryLog& log, JobCache& jobs, std::int64_t arrival, bool& erased) {
  std::set<JobId> changed;
  JAMBLINE_TRY(log.said_after(arrival, [&](const log::Said& said) {
    if (said.header.subject) changed.insert(said.header.subject);
    erased = erased || (said.header.subject && said.header.kind == seal::kind::payload_erased);
    return true;
  }));
  Cars out;
  for (const JobId& job : changed) {
    JAMBLINE_ASSIGN(const auto* known, jobs.get(job));
    const folds::CarView& view = *known->view;
    if (view.opened) out.push_back(shelf::car_of(view));
  }
  return out;
}

void newest_first(Rows& rows) {
  std::stable_sort(rows.begin(), rows.end(),
                   [](const auto& a, const auto& b) { return a.opened_ms > b.opened_ms; });
}

}  // namespace

Result<Floor> Floor::open(const std::filesystem::path& folder, log::EntryLog& log, JobCache& jobs,
                          const std::string& rights) {
  Floor floor;
  const std::int64_t last = log.last_arrival();
  if (auto shelf = shelf::Shelf::open(folder, log.shop()))
    floor.shelf_ = std::move(*shelf);
  else
    floor.take_memory(log.shop());
  std::int64_t known = floor.shelf_ ? floor.shelf_->arrival() : 0;
  // An older copy of the log was put back, or other entries are obeyed now.
  if (known > last || (known > 0 && floor.shelf_->rights() != rights)) {
    known = 0;
    if (!floor.shelf_->clear()) floor.take_memory(log.shop());
  }
  if (known > 0) {
    auto rows = floor.shelf_->in_work();
    if (rows) {
      for (auto& row : *rows) floor.in_work_.emplace(row.job, std::move(row));
    } else {
      known = 0;
    }
  }
  if (floor.shelf_ && !floor.shelf_->keep_rights(rights)) {
    floor.take_memory(log.shop());
    known = 0;
  }
  if (known < last) {
    bool erased = false;
    auto cars = known == 0 ? fold_all(log) : fold_changed(log, jobs, known, erased);
    if (!cars) return fail(std::move(cars.error()));
    Status put = floor.shelf_ ? floor.shelf_->put(*cars, last) : Status();
    if (put && erased && floor.shelf_) put = floor.shelf_->forget_erased();
    if (!put) {
      floor.take_memory(log.shop());
      if (known > 0) cars = fold_all(log);
      if (!cars) return fail(std::move(cars.error()));
      if (floor.shelf_ && !floor.shelf_->put(*cars, last)) floor.shelf_.reset();
    }
    for (auto& [row, lesson, worked, found_by, account] : *cars) {
      if (!floor.shelf_) {
        floor.lessons_.put(std::move(lesson));
        floor.worked_without_shelf_.insert_or_assign(row.job, std::move(worked));
      }
      floor.in_work_.erase(row.job);
      if (!row.delivered_ms)
        floor.in_work_.emplace(row.job, std::move(row));
      else if (!floor.shelf_)
        floor.delivered_without_shelf_.emplace(row.job, std::move(row));
    }
  }
  return floor;
}

void Floor::take_memory(const ShopId& shop) {
  shelf_.reset();
  if (auto shelf = shelf::Shelf::in_memory(shop)) shelf_ = std::move(*shelf);
}

Status Floor::keep_rights(const std::string& rights) {
  return shelf_ && changed_.empty() ? shelf_->keep_rights(rights) : Status();
}

Status Floor::change(const folds::CarView& car, std::int64_t last) {
  // The position moves only when nothing is left to fold: a start after a kill folds again.
  const std::int64_t arrival = changed_.empty() || !shelf_ ? last : shelf_->arrival();
  in_work_list_.reset();
  if (!car.opened) return forget(car.job, arrival);
  folds::FloorRow row = folds::floor_row(car);
  folds::Lesson lesson = folds::lesson_of(car);
  Status stored;
  if (shelf_)
    stored = shelf_->put({shelf::car_of(car)}, arrival);
  else
    worked_without_shelf_.insert_or_assign(car.job, folds::worked_of(car));
  lessons_.put(std::move(lesson));
  if (all_list_) newer_than_list_.insert_or_assign(car.job, row);
  delivered_without_shelf_.erase(car.job);
  if (row.delivered_ms) {
    in_work_.erase(car.job);
    if (!shelf_) delivered_without_shelf_.insert_or_assign(car.job, std::move(row));
  } else {
    in_work_.insert_or_assign(car.job, std::move(row));
  }
  return stored;
}

Result<bool> Floor::take_up_one(JobCache& jobs, std::int64_t arrival) {
  if (changed_.empty()) return false;
  const JobId job = changed_.begin()->first;
  changed_.erase(changed_.begin());
  JAMBLINE_ASSIGN(const auto* known, jobs.get(job));
  JAMBLINE_TRY(change(*known->view, arrival));
  return true;
}

// Nobody opened it, or nobody who is obeyed.
Status Floor::forget(const JobId& job, std::int64_t arrival) {
  in_work_.erase(job);
  delivered_without_shelf_.erase(job);
  worked_without_shelf_.erase(job);
  newer_than_list_.erase(job);
  all_list_.reset();
  lessons_.put({job});
  return shelf_ ? shelf_->drop(job, arrival) : Status();
}

std::shared_ptr<const Rows> Floor::in_work() {
  if (in_work_list_) return in_work_list_;
  auto rows = std::make_shared<Rows>();
  for (const auto& [job, row] : in_work_) rows->push_back(row);
  std::sort(rows->begin(), rows->end(), [](const auto& a, const auto& b) {
    const auto due = [](const auto& row) { return row.promised_ms.value_or(INT64_MAX); };
    return std::tuple(due(a), a.opened_ms, a.job) < std::tuple(due(b), b.opened_ms, b.job);
  });
  return in_work_list_ = std::move(rows);
}

Result<std::shared_ptr<const Rows>> Floor::all() {
  if (all_list_ && newer_than_list_.empty()) return all_list_;
  Rows rows;
  if (all_list_) {
    rows = *all_list_;
    for (auto& row : rows)
      if (auto newer = newer_than_list_.extract(row.job)) row = std::move(newer.mapped());
    for (auto& [job, row] : newer_than_list_) rows.push_back(std::move(row));
    newer_than_list_.clear();
    newest_first(rows);
  } else if (shelf_) {
    JAMBLINE_ASSIGN(rows, shelf_->all());
  } else {
    for (const auto* part : {&in_work_, &delivered_without_shelf_})
      for (const auto& [job, row] : *part) rows.push_back(row);
    newest_first(rows);
  }
  return all_list_ = std::make_shared<const Rows>(std::move(rows));
}

Result<folds::Worked> Floor::worked(std::int64_t from_ms, std::int64_t to_ms) {
  if (shelf_) return shelf_->worked(from_ms, to_ms);
  folds::Worked out;
  for (const auto& [job, of_car] : worked_without_shelf_) {
    for (const auto& span : of_car.spans)
      if (span.end_ms > from_ms && span.start_ms < to_ms) out.spans.push_back(span);
    for (const auto& wait : of_car.waits)
      if (wait.end_ms.value_or(INT64_MAX) > from_ms && wait.start_ms < to_ms)
        out.waits.push_back(wait);
  }
  std::sort(out.spans.begin(), out.spans.end(), [](const auto& a, const auto& b) {
    return std::tie(a.start_ms, a.end_ms) < std::tie(b.start_ms, b.end_ms);
  });
  std::sort(out.waits.begin(), out.waits.end(),
            [](const auto& a, const auto& b) { return a.start_ms < b.start_ms; });
  return out;
}

std::optional<JobId> Floor::clock_of(const PersonId& person) const {
  std::optional<JobId> paused;
  std::int64_t paused_ms = INT64_MIN;
  for (const auto& [job, row] : in_work_) {
    for (const auto& running : row.running) {
      if (running.person != person) continue;
      if (!running.paused) return job;
      if (running.start_ms > paused_ms) {
        paused = job;
        paused_ms = running.start_ms;
      }
    }
  }
  return paused;
}

}  // namespace jambline::engine
