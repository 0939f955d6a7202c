#include "folds/learned.h"

namespace jambline::folds {

namespace {
constexpr double one_area_mm2 = 300.0 * 300.0;

template <class Map>
auto values_of(const Map& map) {
  std::vector<typename Map::mapped_type> out;
  out.reserve(map.size());
  for (const auto& [key, value] : map) out.push_back(value);
  return out;
}
}  // namespace

std::optional<double> LearnedTime::min_per_area() const {
  if (area_mm2 <= 0) return std::nullopt;
  return work_min / (area_mm2 / one_area_mm2);
}

void Learned::add(const Lesson& car) {
  for (const auto& round : car.rounds) {
    if (person_ && round.by != *person_) continue;
    LearnedTime& time = times_[round.round];
    time.round = round.round;
    time.areas += round.areas;
    time.area_mm2 += round.area_mm2;
    time.work_min += round.work_min;
  }
  for (const auto& ends : car.ends) {
    LearnedReturns& returns = returns_[ends.defect];
    returns.defect = ends.defect;
    returns.ended += ends.ended;
    returns.came_back += ends.came_back;
  }
  for (const auto& sequence : car.sequences)
    sequences_[sequence.rounds].push_back(sequence.taken_um);
}

std::vector<LearnedTime> Learned::times() const {
  return values_of(times_);
}
std::vector<LearnedReturns> Learned::returns() const {
  return values_of(returns_);
}
std::vector<LearnedSequence> Learned::sequences() const {
  std::vector<LearnedSequence> out;
  out.reserve(sequences_.size());
  for (const auto& [rounds, taken_um] : sequences_) out.push_back({rounds, taken_um});
  return out;
}

}  // namespace jambline::folds
