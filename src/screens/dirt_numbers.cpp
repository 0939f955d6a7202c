#include "screens/dirt_numbers.h"

#include <algorithm>
#include <map>

namespace jambline::screens {

namespace {
void sum_painters(const std::vector<folds::Lesson>& cars, double confidence, DirtNumbers& out) {
  std::map<PersonId, DirtPainter> sums;
  for (const auto& car : cars)
    for (const PersonId& person : car.painters) {
      DirtPainter& sum = sums[person];
      sum.person = person;
      ++sum.cars;
      sum.nibs += car.nibs;
      sum.sprayed_m2 += car.sprayed_m2;
    }
  for (auto& [person, sum] : sums) {
    const auto mean = trade::poisson_interval(sum.nibs, confidence);
    sum.rate_m2 = {mean.low / sum.sprayed_m2, mean.high / sum.sprayed_m2};
    sum.ranked = sum.cars >= cars_to_rank;
    out.painters.push_back(sum);
  }
  std::stable_sort(out.painters.begin(), out.painters.end(), [](const auto& a, const auto& b) {
    if (a.ranked != b.ranked) return a.ranked;
    return a.ranked ? a.per_m2() < b.per_m2() : a.cars > b.cars;
  });
}
}  // namespace

Result<DirtNumbers> dirt_numbers(const folds::DirtAsked& asked, bool by_painter,
                                 const std::vector<folds::Lesson>& lessons,
                                 const std::vector<folds::BoothEventView>& events) {
  const auto dirt = folds::dirt_over_time(lessons, events, asked);
  DirtNumbers out;
  out.left_out = dirt.left_out;
  if (dirt.cars.empty()) return out;
  JAMBLINE_ASSIGN(const auto result, trade::dirt_chart(dirt.chart));
  for (std::size_t i = 0; i < dirt.cars.size(); ++i) {
    out.cars.push_back({dirt.cars[i], result.points[i]});
    out.nibs += dirt.cars[i].nibs;
    out.sprayed_m2 += dirt.cars[i].sprayed_m2;
  }
  for (std::size_t i = 0; i < dirt.changes.size(); ++i) {
    out.changes.push_back({dirt.changes[i], {}});
    if (const auto* effect = folds::effect_of(dirt, i, result)) out.changes.back().effect = *effect;
  }
  out.causes = dirt.causes;
  out.cause_not_said = dirt.cause_not_said;
  out.basis = result.basis;
  if (by_painter) sum_painters(dirt.cars, dirt.chart.confidence, out);
  return out;
}

}  // namespace jambline::screens
