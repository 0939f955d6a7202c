#include "engine/lessons.h"

#include <algorithm>

namespace jambline::engine {

namespace {
constexpr int lessons_at_once = 250;

bool before(const folds::Lesson& lesson, const JobId& job) {
  return lesson.job < job;
}
}  // namespace

const folds::Lesson* Lessons::listed(const JobId& job) const {
  if (!list_) return nullptr;
  const auto found = std::lower_bound(list_->begin(), list_->end(), job, before);
  return found != list_->end() && found->job == job ? &*found : nullptr;
}

void Lessons::put(folds::Lesson lesson) {
  const auto* known = listed(lesson.job);
  if (known && *known == lesson)
    newer_.erase(lesson.job);
  else
    newer_.insert_or_assign(lesson.job, std::move(lesson));
}

Result<bool> Lessons::take_some(shelf::Shelf* shelf) {
  if (all_there_) return false;
  if (shelf) {
    JAMBLINE_ASSIGN(auto some, shelf->lessons_after(taken_up_to_, lessons_at_once));
    all_there_ = some.size() < static_cast<std::size_t>(lessons_at_once);
    if (!some.empty()) taken_up_to_ = some.back().job;
    for (auto& lesson : some) newer_.try_emplace(lesson.job, std::move(lesson));
  } else {
    all_there_ = true;
  }
  return !all_there_;
}

std::shared_ptr<const std::vector<folds::Lesson>> Lessons::list() {
  if (!all_there_ || (list_ && newer_.empty())) return list_;
  auto next = std::make_shared<std::vector<folds::Lesson>>();
  next->reserve((list_ ? list_->size() : 0) + newer_.size());
  auto newer = newer_.begin();
  const auto take_newer = [&] { next->push_back(std::move((newer++)->second)); };
  if (list_) {
    for (const auto& lesson : *list_) {
      while (newer != newer_.end() && newer->first < lesson.job) take_newer();
      if (newer != newer_.end() && newer->first == lesson.job)
        take_newer();
      else
        next->push_back(lesson);
    }
  }
  while (newer != newer_.end()) take_newer();
  newer_.clear();
  return list_ = std::move(next);
}

}  // namespace jambline::engine
