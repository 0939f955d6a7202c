// engine/lessons.h: what all cars teach, once a screen wants it.
//
// Shape:   those of cars that changed since the start, or of all where there is no shelf, are in
//          memory; the others are taken from the shelf part by part, so that taps go between.
// Threads: the work lane.
#pragma once

#include <map>
#include <memory>
#include <vector>

#include "folds/lesson.h"
#include "shelf/shelf.h"

namespace jambline::engine {

class Lessons {
 public:
  // The newest of a car.
  void put(folds::Lesson lesson);
  // Takes one part of those on the shelf (none: there is no shelf); false when all are there.
  Result<bool> take_some(shelf::Shelf* shelf);
  // By job; null until all are there. The same list as long as nothing changed.
  std::shared_ptr<const std::vector<folds::Lesson>> list();

 private:
  const folds::Lesson* listed(const JobId& job) const;

  bool all_there_ = false;
  std::vector<folds::Lesson> taken_;      // from the shelf, until there is a list
  std::map<JobId, folds::Lesson> newer_;  // than what was taken or is listed
  std::shared_ptr<const std::vector<folds::Lesson>> list_;
};

}  // namespace jambline::engine
