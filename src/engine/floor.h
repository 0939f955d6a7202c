// engine/floor.h: the rows and lessons of all cars, kept on the shelf and in memory as far as
// screens ask.
//
// Shape:   rows of cars in work are always in memory; those of all cars once somebody wants them.
// Threads: the work lane.
// Errors:  a shelf that cannot be written is no reason to stop: rows stay right in memory, and the
//          next start folds again. One that cannot be had at the start is made in memory.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <vector>

#include "engine/job_cache.h"
#include "engine/lessons.h"
#include "folds/floor_view.h"
#include "shelf/shelf.h"

namespace jambline::engine {

class Floor {
 public:
  // Loads what the shelf knows and folds what it does not: everything, when it was folded by other
  // rights (engine/rights_of_log.h, stamp_of).
  static Result<Floor> open(const std::filesystem::path& folder, log::EntryLog& log, JobCache& jobs,
                            const std::string& rights);

  // The job's row after it changed. `arrival`: how far the log is folded now.
  Status change(const folds::CarView& car, std::int64_t arrival);
  // Jobs changed by an import; taken up one at a time.
  void note_changed(const JobId& job) { changed_[job] = true; }
  // Folds one noted job; false when none is left.
  Result<bool> take_up_one(JobCache& jobs, std::int64_t arrival);

  // Nothing is left to take up: all rows go by these rights.
  Status keep_rights(const std::string& rights);

  std::shared_ptr<const std::vector<folds::FloorRow>> in_work();
  Result<std::shared_ptr<const std::vector<folds::FloorRow>>> all();
  // Part by part; false when all are there. Null until then.
  Result<bool> take_lessons() { return lessons_.take_some(shelf_ ? &*shelf_ : nullptr); }
  std::shared_ptr<const std::vector<folds::Lesson>> lessons() { return lessons_.list(); }

  // Worked spans and waits of all cars that reach into [from, to), by start.
  Result<folds::Worked> worked(std::int64_t from_ms, std::int64_t to_ms);

  // Where the shelf can be searched; none when there is no shelf at all.
  std::optional<shelf::Whereabouts> where() const {
    return shelf_ ? std::optional(shelf_->where()) : std::nullopt;
  }
  // After a text of a car was erased and the car folded again.
  Status forget_erased() { return shelf_ ? shelf_->forget_erased() : Status(); }

  // Where the person's clock runs or, failing that, is paused.
  std::optional<JobId> clock_of(const PersonId& person) const;

 private:
  Status forget(const JobId& job, std::int64_t arrival);
  void take_memory(const ShopId& shop);

  std::optional<shelf::Shelf> shelf_;  // none when it could not be opened
  std::map<JobId, folds::FloorRow> in_work_;
  Lessons lessons_;
  std::map<JobId, bool> changed_;
  std::shared_ptr<const std::vector<folds::FloorRow>> in_work_list_;
  std::shared_ptr<const std::vector<folds::FloorRow>> all_list_;  // once somebody asked
  std::map<JobId, folds::FloorRow> newer_than_list_;              // changed since all_list_
  std::map<JobId, folds::FloorRow> delivered_without_shelf_;
  std::map<JobId, folds::Worked> worked_without_shelf_;
};

}  // namespace jambline::engine
