#include "engine/lessons.h"

#include <algorithm>

namespace jambline::engine {

namespace {
constexpr int lessons_at_once = 100;

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
    const JobId up_to = taken_.empty() ? JobId{} : taken_.back().job;
    JAMBLINE_ASSIGN(auto some, shelf->lessons_after(up_to, lessons_at_once));
    all_there_ = some.size() < static_cast<std::size_t>(lessons_at_once);
    for (auto& lesson : some) taken_.push_back(std::move(lesson));
  } else {
    all_there_ = true;
  }
  return !all_there_;
}

std::shared_ptr<const std::vector<folds::Lesson>> Lessons::list() {
  if (!all_there_ || (list_ && newer_.empty())) return list_;
  std::vector<folds::Lesson> old;
  if (list_)
    old = *list_;
  else
    old.swap(taken_);
  if (newer_.empty())
    return list_ = std::make_shared<const std::vector<folds::Lesson>>(std::move(old));
  auto next = std::make_shared<std::vector<folds::Lesson>>();
  next->reserve(old.size() + newer_.size());
  auto newer = newer_.begin();
  for (auto& lesson : old) {
    while (newer != newer_.end() && newer->first < lesson.job)
      next->push_back(std::move((newer++)->second));
    if (newer != newer_.end() && newer->first == lesson.job)
      next->push_back(std::move((newer++)->second));
    else
      next->push_back(std::move(lesson));
  }
  while (newer != newer_.end()) next->push_back(std::move((newer++)->second));
  newer_.clear();
  return list_ = std::move(next);
}

}  // namespace jambline::engine
