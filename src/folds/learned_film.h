// folds/learned_film.h: where a shop found its film still soft when the sheet's time was over, and
// how much longer it takes that film since then.
//
// Rule:   over the last `cars_looked_at` cars whose film of the product was checked with the
//         thumbnail, the car that took longest counts: until it was firm again, or, where nobody
//         checked again, as long as it was seen soft. Under the sheet's time nothing is learned,
//         and a factor is never under 1 (common practice, no source: the stricter outcome stands).
// Own:    what the car itself was found to be holds that car by the check alone, so its own lesson
//         is left out.
// Pure.
#pragma once

#include <map>
#include <vector>

#include "folds/lesson.h"

namespace jambline::folds {

class LearnedFilm {
 public:
  static constexpr int cars_looked_at = 5;

  struct Of {
    double factor = 1;
    int cars = 0;  // that were checked, of the last five
    int soft = 0;  // of them: soft at the sheet's time
    friend bool operator==(const Of&, const Of&) = default;
  };

  void add(const Lesson& car);
  Of of(const ProductId& product, const JobId& without) const;

 private:
  struct Seen {
    JobId job;
    std::int64_t checked_ms = 0;
    double factor = 1;
  };
  std::map<ProductId, std::vector<Seen>> products_;
};

}  // namespace jambline::folds
