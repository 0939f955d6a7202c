#include "folds/learned_durations.h"

#include <algorithm>
#include <cmath>

#include "folds/learned.h"

namespace jambline::folds {

bool LearnedDuration::used() const {
  return cars >= shown_from;
}

void LearnedDurations::add(const Lesson& car) {
  for (const auto& one : car.durations) {
    if (one.estimate_min <= 0 || one.clocked_min <= 0) continue;
    Sums& sums = stages_[one.stage];
    const double ratio = one.clocked_min / one.estimate_min;
    ++sums.cars;
    sums.sum += ratio;
    sums.squares += ratio * ratio;
  }
}

LearnedDuration LearnedDurations::of(job::Stage stage, const Sums& sums) const {
  LearnedDuration out{stage, sums.cars, 0, 0};
  if (sums.cars == 0) return out;
  out.mean_ratio = sums.sum / sums.cars;
  if (sums.cars > 1) {
    const double variance =
        (sums.squares - sums.cars * out.mean_ratio * out.mean_ratio) / (sums.cars - 1);
    out.sd_ratio = std::sqrt(std::max(0.0, variance));
  }
  return out;
}

std::vector<LearnedDuration> LearnedDurations::stages() const {
  std::vector<LearnedDuration> out;
  for (const auto& [stage, sums] : stages_) out.push_back(of(stage, sums));
  return out;
}

Spread LearnedDurations::spread_of(job::Stage stage) const {
  const auto found = stages_.find(stage);
  if (found == stages_.end()) return usual_spread;
  const LearnedDuration learned = of(stage, found->second);
  if (!learned.used()) return usual_spread;
  const double mean = learned.mean_ratio;
  const double sd = learned.sd_ratio;
  Spread out{mean - 2.06 * sd, mean - 0.65 * sd, mean + 2.71 * sd};
  if (out.least >= 0) return out;
  // No work is shorter than none: the same mean, leaning further.
  out.least = 0;
  out.likely = std::max(0.0, out.likely);
  out.most = std::max(out.likely, 3 * mean - out.likely);
  return out;
}

int LearnedDurations::cars_of(job::Stage stage) const {
  const auto found = stages_.find(stage);
  return found == stages_.end() || found->second.cars < shown_from ? 0 : found->second.cars;
}

}  // namespace jambline::folds
