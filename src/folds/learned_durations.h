// folds/learned_durations.h: how long the stages of a shop take against what they were estimated.
//
// Shape:  for each stage the ratio of clocked to estimated minutes of first-time work, over cars on
//         which that stage is done. Under ten cars nothing is used: then a stage is taken as long
//         as it was estimated, and spread as `usual_spread` says (common practice, no source).
// Spread: mean and standard deviation of the ratios, as the triangle that has both and leans to the
//         long side: least mean - 2.06 sd, likely mean - 0.65 sd, most mean + 2.71 sd (its mean is
//         the mean, its variance sd^2, by the triangle's own moments).
// Pure.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "folds/lesson.h"

namespace jambline::folds {

struct Spread {
  double least{};
  double likely{};
  double most{};
};
inline constexpr Spread usual_spread{0.7, 0.95, 1.6};

struct LearnedDuration {
  job::Stage stage{};
  int cars = 0;
  double mean_ratio = 0;
  double sd_ratio = 0;
  bool used() const;
};

class LearnedDurations {
 public:
  void add(const Lesson& car);
  std::vector<LearnedDuration> stages() const;
  // Factors on an estimate, and on how many cars they rest (0: the usual ones).
  Spread spread_of(job::Stage stage) const;
  int cars_of(job::Stage stage) const;
  friend bool operator==(const LearnedDurations&, const LearnedDurations&) = default;

 private:
  struct Sums {
    int cars = 0;
    double sum = 0;
    double squares = 0;
    friend bool operator==(const Sums&, const Sums&) = default;
  };
  LearnedDuration of(job::Stage stage, const Sums& sums) const;
  std::map<job::Stage, Sums> stages_;
};

}  // namespace jambline::folds
