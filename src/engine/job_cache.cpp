#include "engine/job_cache.h"

#include <algorithm>

#include "engine/read_entry.h"

namespace jambline::engine {

Result<const JobCache::Job*> JobCache::get(const JobId& id) {
  if (const auto found = by_id_.find(id); found != by_id_.end()) return &touch(found->second);
  Job job(id);
  auto timeline = std::make_shared<std::vector<entries::Entry>>();
  JAMBLINE_TRY(log_.said_of(id, [&](const log::Said& said) {
    timeline->push_back(read_entry(said));
    return true;
  }));
  job.rights = folds::judge_all(rights_, *timeline);
  for (const auto& entry : *timeline) job.fold.apply(entry);
  std::sort(timeline->begin(), timeline->end(),
            [](const auto& a, const auto& b) { return a.order < b.order; });
  job.view = std::make_shared<const folds::CarView>(job.fold.view());
  job.timeline = std::move(timeline);
  drop_oldest();
  jobs_.push_front(std::move(job));
  by_id_[id] = jobs_.begin();
  return &jobs_.front();
}

Result<const JobCache::Job*> JobCache::grow(const JobId& id,
                                            const std::vector<entries::Entry>& fresh) {
  const auto found = by_id_.find(id);
  if (found == by_id_.end()) return get(id);
  Job& job = touch(found->second);
  auto timeline = std::make_shared<std::vector<entries::Entry>>(*job.timeline);
  for (entries::Entry entry : fresh) {
    if (job.rights.judge(rights_, entry)) {
      forget(id);
      return get(id);
    }
    job.fold.apply(entry);
    const auto place =
        std::upper_bound(timeline->begin(), timeline->end(), entry,
                         [](const auto& a, const auto& b) { return a.order < b.order; });
    timeline->insert(place, std::move(entry));
  }
  job.timeline = std::move(timeline);
  job.view = std::make_shared<const folds::CarView>(job.fold.view());
  return &job;
}

Status JobCache::grow_if_known(const JobId& id, const std::vector<entries::Entry>& fresh) {
  if (by_id_.find(id) == by_id_.end()) return {};
  JAMBLINE_TRY(grow(id, fresh));
  return {};
}

void JobCache::forget(const JobId& id) {
  const auto found = by_id_.find(id);
  if (found == by_id_.end()) return;
  jobs_.erase(found->second);
  by_id_.erase(found);
}

JobCache::Job& JobCache::touch(std::list<Job>::iterator job) {
  jobs_.splice(jobs_.begin(), jobs_, job);
  return jobs_.front();
}

void JobCache::drop_oldest() {
  if (jobs_.size() < most_jobs) return;
  by_id_.erase(jobs_.back().view->job);
  jobs_.pop_back();
}

}  // namespace jambline::engine
