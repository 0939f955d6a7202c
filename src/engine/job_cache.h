// engine/job_cache.h: the folds of the jobs that are being worked on, made from the log when asked.
//
// Shape:   at most `most_jobs` jobs, the least used goes first. Views are immutable and shared.
// Threads: the work lane.
#pragma once

#include <list>
#include <memory>
#include <unordered_map>
#include <vector>

#include "entries/entry.h"
#include "folds/job_fold.h"
#include "folds/rights_fold.h"
#include "log/entry_log.h"

namespace jambline::engine {

class JobCache {
 public:
  struct Job {
    explicit Job(const JobId& id) : fold(id) {}
    folds::JobFold fold;
    folds::StreamRights rights;
    std::shared_ptr<const folds::CarView> view;
    std::shared_ptr<const std::vector<entries::Entry>> timeline;  // in display order
  };

  // Both outlive the cache. A job whose entries are judged otherwise by changed rights is forgotten
  // by whoever changes them.
  JobCache(log::EntryLog& log, const folds::RightsFold& rights) : log_(log), rights_(rights) {}

  // The job as the log has it; view->opened is false for one that nobody opened.
  Result<const Job*> get(const JobId& id);
  // Takes in entries of one job that were just written or have just arrived. A job that is not in
  // the cache is read from the log, which has them already.
  Result<const Job*> grow(const JobId& id, const std::vector<entries::Entry>& fresh);
  // The same for a job that is in the cache; one that is not stays out.
  Status grow_if_known(const JobId& id, const std::vector<entries::Entry>& fresh);
  void forget(const JobId& id);

 private:
  static constexpr std::size_t most_jobs = 48;
  Job& touch(std::list<Job>::iterator job);
  void drop_oldest();

  log::EntryLog& log_;
  const folds::RightsFold& rights_;
  std::list<Job> jobs_;  // most lately used first
  std::unordered_map<JobId, std::list<Job>::iterator> by_id_;
};

}  // namespace jambline::engine
