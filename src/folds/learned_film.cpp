#include "folds/learned_film.h"

#include <algorithm>

namespace jambline::folds {

namespace {
constexpr double most_factor = 10;

double factor_of(const LessonFilm& film) {
  if (film.soft_percent <= 100) return 1;
  const double needed = std::max(film.soft_percent, film.firm_percent.value_or(0));
  return std::min(most_factor, needed / 100);
}
}  // namespace

void LearnedFilm::add(const Lesson& car) {
  for (const auto& film : car.films) {
    auto& cars = products_[film.product];
    if (cars.empty() || cars.back().job != car.job) cars.push_back({car.job});
    cars.back().checked_ms = std::max(cars.back().checked_ms, film.checked_ms);
    cars.back().factor = std::max(cars.back().factor, factor_of(film));
  }
}

LearnedFilm::Of LearnedFilm::of(const ProductId& product, const JobId& without) const {
  Of out;
  const auto found = products_.find(product);
  if (found == products_.end()) return out;
  std::vector<Seen> cars;
  for (const auto& one : found->second)
    if (one.job != without) cars.push_back(one);
  std::sort(cars.begin(), cars.end(),
            [](const Seen& a, const Seen& b) { return a.checked_ms > b.checked_ms; });
  if (cars.size() > cars_looked_at) cars.resize(cars_looked_at);
  for (const auto& one : cars) {
    ++out.cars;
    out.soft += one.factor > 1 ? 1 : 0;
    out.factor = std::max(out.factor, one.factor);
  }
  return out;
}

}  // namespace jambline::folds
